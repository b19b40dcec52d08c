import { recipe, type Recipe, type StrengthInput } from '#libs/coolant';
import type { CardProduct } from '../card-known.ts';

export type MissingFigure = 'capacity' | 'drained' | 'strength' | 'product' | 'label';

/** What goes into one jug; `keptMl` only in the jugs of coolant that goes back in. */
export interface PlannedJug {
  readonly productMl: number;
  readonly waterMl: number;
  readonly keptMl: number;
}

export type RefillRecipe =
  | { readonly kind: 'asks'; readonly missing: readonly MissingFigure[] }
  | { readonly kind: 'refused'; readonly why: string }
  | {
      readonly kind: 'ready';
      readonly recipe: Recipe;
      readonly jugs: readonly PlannedJug[];
      readonly productName: string;
      readonly isReadyMixed: boolean;
    };

export interface RefillQuestion {
  readonly capacityL: number | null;
  readonly drainedL: number | null;
  readonly missingL: number;
  readonly keptL: number;
  readonly filledBeforeL: number;
  readonly residual: StrengthInput | null;
  readonly product: CardProduct | null;
  readonly target: { readonly coldestAirC: number; readonly marginK: number };
  readonly jugMl: number;
  readonly markMl: number;
}

/** The recipe of this car's refill in jugs, or what is still to be known for it. */
export function refillRecipe(question: RefillQuestion): RefillRecipe {
  const { capacityL, drainedL, residual, product } = question;
  const spaceL = round((drainedL ?? 0) + question.missingL - question.keptL - question.filledBeforeL);
  const isPartFull = capacityL !== null && spaceL < capacityL;
  const missing: MissingFigure[] = [
    ...(capacityL === null ? (['capacity'] as const) : []),
    ...(drainedL === null ? (['drained'] as const) : []),
    ...(drainedL !== null && isPartFull && residual === null ? (['strength'] as const) : []),
    ...(product === null ? (['product'] as const) : []),
    ...(product?.isReadyMixed === true && product.label === null ? (['label'] as const) : []),
  ];
  if (missing.length > 0 || capacityL === null || product === null) return { kind: 'asks', missing };
  if (spaceL <= 0) return { kind: 'refused', why: 'By the card there is no space to fill: check what was drained, kept and poured.' };
  return reckon(question, { capacityL, spaceL, product });
}

function reckon(
  { residual, target, jugMl, markMl, keptL }: RefillQuestion,
  { capacityL, spaceL, product }: { capacityL: number; spaceL: number; product: CardProduct },
): RefillRecipe {
  const found = recipe({
    glycol: product.glycol,
    systemVolumeL: capacityL,
    drainedVolumeL: spaceL,
    residual: residual ?? undefined,
    additive: product.label ? { label: product.label } : { isContentUnknown: true },
    target,
    jugL: jugMl / 1000,
    markMl,
    limits: { minimumPercent: product.minimumPercent, maximumPercent: product.maximumPercent },
  });
  if (!found.ok) return { kind: 'refused', why: found.problem.message };
  const mixed = (found.roundedJugs?.jugs ?? []).map(({ additiveMl, waterMl }) => ({ productMl: additiveMl, waterMl, keptMl: 0 }));
  return {
    kind: 'ready',
    recipe: found,
    jugs: [...keptJugs(keptL * 1000, jugMl), ...mixed],
    productName: product.name,
    isReadyMixed: product.isReadyMixed,
  };
}

/** What was kept goes back in first, as it is. */
function keptJugs(keptMl: number, jugMl: number): readonly PlannedJug[] {
  const whole = Math.round(keptMl);
  const full = Math.floor(whole / jugMl);
  const rest = whole - full * jugMl;
  const amounts = [...Array.from({ length: full }, () => jugMl), ...(rest > 0 ? [rest] : [])];
  return amounts.map((amount) => ({ productMl: 0, waterMl: 0, keptMl: amount }));
}

/** Sums of litres without the dust of binary fractions. */
const round = (litres: number): number => Math.round(litres * 1e6) / 1e6;
