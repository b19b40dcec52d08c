import { type DecimalString, type MarkupRule } from '#libs/money';
import { type TaxTreatment } from '../document/invoice-line.ts';

/** Who said yes, when and how. */
export interface Authorisation {
  readonly by: string;
  readonly at: string;
  readonly how: 'link' | 'phone' | 'in-person' | 'message';
}

/** A part of the estimate that is taken or left as one (a thermostat is not sold without its seal). */
export interface WorkPackage {
  readonly id: string;
  readonly name: string;
  readonly answer: { readonly kind: 'yes'; readonly authorisation: Authorisation } | { readonly kind: 'no' } | { readonly kind: 'open' };
  /** The most the customer agreed to for this package, with tax; null for no limit of its own. */
  readonly ceiling: DecimalString | null;
}

interface OfPackage {
  readonly packageId: string;
}

/** Labour at a menu price, or by the hours really worked; both before tax. */
export interface LabourFact extends OfPackage, TaxTreatment {
  readonly words: string;
  readonly charge:
    | { readonly kind: 'menu'; readonly price: DecimalString }
    | { readonly kind: 'hours'; readonly hours: DecimalString; readonly ratePerHour: DecimalString };
}

/** A part of the job; only what stayed in the car or was sold over the counter is billed. */
export interface PartFact extends OfPackage, TaxTreatment {
  readonly name: string;
  readonly partNumber?: string;
  readonly quantity: DecimalString;
  /** UN/ECE Recommendation 20 code. */
  readonly unit: string;
  readonly place: 'fitted' | 'sold' | 'elsewhere';
  readonly price:
    | { readonly kind: 'set'; readonly unitPrice: DecimalString }
    | { readonly kind: 'marked-up'; readonly unitCost: DecimalString; readonly rule: MarkupRule };
}

/** A product on the coolant shelf: concentrate, ready-mixed coolant, demineralised water. */
export interface CoolantProduct extends TaxTreatment {
  readonly id: string;
  readonly name: string;
  readonly pricePerL: DecimalString;
}

/** One product poured into the car; a jug of mix is two of these. */
export interface ProductPour {
  readonly productId: string;
  readonly volumeL: DecimalString;
}

/**
 * What went into the system. `new`: products from the shelf, each by its own litres. `kept`: this car's own coolant going
 * back in. `mix`: a volume of mix whose products were not recorded apart.
 */
export type CoolantPour =
  | { readonly kind: 'new'; readonly products: readonly ProductPour[] }
  | { readonly kind: 'kept'; readonly volumeL: DecimalString }
  | { readonly kind: 'mix'; readonly volumeL: DecimalString };

export interface CoolantFact extends OfPackage {
  readonly products: readonly CoolantProduct[];
  readonly pours: readonly CoolantPour[];
}

/** Small materials: by the piece, or as a share of the package's labour with a cap (common practice, no source). */
export type ConsumableFact = OfPackage &
  TaxTreatment & {
    readonly words: string;
    readonly charge:
      | { readonly kind: 'item'; readonly quantity: DecimalString; readonly unit: string; readonly unitPrice: DecimalString }
      | { readonly kind: 'share-of-labour'; readonly percent: DecimalString; readonly maximum?: DecimalString };
  };

/** What getting rid of the waste costs the customer: by volume, or a fixed sum. */
export type WasteFact = OfPackage &
  TaxTreatment & {
    readonly words: string;
    /** Note in the waste book. */
    readonly drumNote?: string;
    readonly charge:
      | { readonly kind: 'volume'; readonly volumeL: DecimalString; readonly pricePerL: DecimalString }
      | { readonly kind: 'fixed'; readonly price: DecimalString };
  };

/** Everything a draft is made of. */
export interface JobWork {
  readonly packages: readonly WorkPackage[];
  /** The most the customer agreed to for the whole job, with tax; null for no limit. */
  readonly ceiling: DecimalString | null;
  readonly labour: readonly LabourFact[];
  readonly parts: readonly PartFact[];
  readonly coolant: readonly CoolantFact[];
  readonly consumables: readonly ConsumableFact[];
  readonly waste: readonly WasteFact[];
}
