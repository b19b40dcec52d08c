import { type ColdReading } from '../holds/safe-to-open.ts';

/** Torque as the manual prints it and as the wrench was set. */
export interface TorqueEntry {
  readonly setAt: number;
  readonly unit: 'Nm' | 'lbf·ft' | 'lbf·in';
  readonly tightened: number;
  readonly of: number;
  readonly inSequence: boolean;
  readonly document: string;
  readonly page: string;
  /** Thread size, when it is known, for the check of the entry: 'M6', 'M8' … */
  readonly thread: string | null;
  /** Further stages or angles as the manual prints them. */
  readonly then: string | null;
}

/** One pour, in mL: new product (as sold), water, and coolant of this car that went back in. */
export interface FillAmounts {
  readonly productMl: number;
  readonly waterMl: number;
  readonly keptMl: number;
}

export interface LeftOff {
  readonly item: string;
  readonly why: string;
}

/** The evidence of one action, read and checked. */
export type EvidenceValue =
  | { readonly kind: 'tick' }
  | {
      readonly kind: 'reading';
      readonly value: number;
      readonly about: boolean;
      readonly instrument: string | null;
      readonly expandedU: number | null;
    }
  | { readonly kind: 'cold-reading'; readonly reading: ColdReading; readonly instrument: string; readonly place: string }
  | { readonly kind: 'litres'; readonly litres: number; readonly about: boolean }
  | { readonly kind: 'choice'; readonly choice: string; readonly asked: Readonly<Record<string, number>> }
  | { readonly kind: 'list'; readonly items: readonly string[]; readonly leftOff: readonly LeftOff[] }
  | { readonly kind: 'count'; readonly counted: number; readonly of: number }
  | { readonly kind: 'variant'; readonly variant: string; readonly basis: VariantBasis; readonly words: string | null }
  | { readonly kind: 'torque'; readonly entry: TorqueEntry }
  | { readonly kind: 'fill'; readonly amounts: FillAmounts; readonly about: boolean }
  /** `belowMarkMl` null: the tank was empty, how much is missing is not known. */
  | { readonly kind: 'level'; readonly belowMarkMl: number | null; readonly amounts: FillAmounts };

export const VARIANT_BASES = ['side-by-side', 'readings', 'stamp', 'fitted-before'] as const;
export type VariantBasis = (typeof VARIANT_BASES)[number];
