import { boiling, type Boiling, type Problem, recipe, type Recipe, refillSpace, type Warning } from '#libs/coolant';
import type { ReadForm } from '../form/bench-field.ts';
import { glycolOf } from '../form/glycol-field.ts';
import type { ShelfProduct } from '../../coolant-shelf/coolant-shelf.service.ts';
import { additiveOf } from './additive-of.ts';
import type { Asked } from './asked.ts';
import { fieldOfProblem } from './field-of-problem.ts';
import { residualOf } from './residual-of.ts';
import { targetOf } from './target-of.ts';

export interface ReadyRefill {
  readonly kind: 'ready';
  readonly recipe: Recipe;
  readonly productName: string;
  readonly isReadyMixed: boolean;
  readonly keptL: number;
  /** With the cap on; null where no cap is known. */
  readonly boils: Boiling | null;
  readonly boilsOpen: Boiling;
  readonly assumptions: readonly string[];
  readonly warnings: readonly Warning[];
  readonly sources: readonly string[];
}

export type RefillAnswer =
  | { readonly kind: 'asks'; readonly field: string }
  | { readonly kind: 'refused'; readonly field: string; readonly message: string; readonly requiredOutL?: number }
  | ReadyRefill;

const stopped = ({ field, message, problem }: Exclude<Asked<never>, { ok: true }>): RefillAnswer => {
  const words = message ?? problem?.message;
  return words === undefined ? { kind: 'asks', field } : { kind: 'refused', field, message: words };
};

/** What must come out in all, from the space that the recipe needs. */
function refusedRecipe(problem: Problem, { missing = 0, kept = 0 }: Readonly<Record<string, number | undefined>>): RefillAnswer {
  const requiredL = problem.requiredDrainL;
  return {
    kind: 'refused',
    field: fieldOfProblem(problem),
    message: problem.message,
    ...(requiredL === undefined ? {} : { requiredOutL: Math.ceil((requiredL - missing + kept) * 100 - 1e-6) / 100 }),
  };
}

/** The space to fill, or undefined for an empty system. */
function spaceOf({ figures, errors }: ReadForm, holds: number): Asked<number | undefined> {
  const { out, missing = 0, kept = 0 } = figures;
  // A mistyped figure must not pass for an empty field, which stands for a dry system.
  if (out === undefined) return errors['out'] === undefined ? { ok: true, value: undefined } : { ok: false, field: 'out' };
  if (kept > out) return { ok: false, field: 'kept', message: 'No more can go back in than was measured out. Check both figures.' };
  const space = refillSpace({ systemVolumeL: holds, missingOnArrivalL: missing, drainedL: out });
  if (!space.ok) return { ok: false, field: space.problem.field === 'systemVolumeL' ? 'holds' : 'out', problem: space.problem };
  return { ok: true, value: space.spaceL - kept };
}

/** The refill from the figures in force, or what keeps it from being reckoned. */
export function reckonRefill(form: ReadForm, products: readonly ShelfProduct[]): RefillAnswer {
  const glycol = glycolOf(form);
  const { holds, jug, mark, kept = 0 } = form.figures;
  if (holds === undefined) return { kind: 'asks', field: 'holds' };
  const space = spaceOf(form, holds);
  if (!space.ok) return stopped(space);
  const chosen = additiveOf(form, products);
  if (!chosen.ok) return stopped(chosen);
  const isPart = space.value !== undefined && space.value < holds;
  const residual = isPart ? residualOf(form, chosen.value) : undefined;
  if (residual?.ok === false) return stopped(residual);
  const target = targetOf(form);
  if (!target.ok) return stopped(target);
  const { additive, limits, name } = chosen.value;
  const found = recipe({
    glycol,
    systemVolumeL: holds,
    drainedVolumeL: space.value,
    residual: residual?.value.strength,
    isResidualAssumed: residual?.value.isAssumed,
    capacityKind: form.choices['kind'] === 'service-refill' ? 'service-refill' : 'dry-fill',
    additive,
    target: target.value,
    jugL: jug,
    markMl: mark,
    limits,
  });
  if (!found.ok) return refusedRecipe(found.problem, form.figures);
  return withBoiling(form, { recipe: found, productName: name, keptL: kept, read: residual?.value });
}

interface Found {
  recipe: Recipe;
  productName: string;
  keptL: number;
  read: { assumptions: readonly string[]; warnings: readonly Warning[] } | undefined;
}

function withBoiling(form: ReadForm, { recipe: found, productName, keptL, read }: Found): RefillAnswer {
  const { cap, capHeld, altitude, hottest } = form.figures;
  const poured = found.roundedJugs ?? found;
  const strength = { glycol: glycolOf(form), volumePercent: poured.resultVolumePercent, altitudeM: altitude };
  const open = boiling({ ...strength, capGaugeKPa: 0 });
  if (!open.ok) return { kind: 'refused', field: fieldOfProblem(open.problem), message: open.problem.message };
  const hasCap = cap !== undefined || capHeld !== undefined;
  const shut = hasCap ? boiling({ ...strength, capGaugeKPa: cap, capMeasuredKPa: capHeld, hottestExpectedC: hottest }) : undefined;
  if (shut?.ok === false) return { kind: 'refused', field: fieldOfProblem(shut.problem), message: shut.problem.message };
  const boils = shut ?? open;
  return {
    kind: 'ready',
    recipe: found,
    productName,
    isReadyMixed: found.resultProductPercent === null && found.waterL < 1e-9,
    keptL,
    boils: shut ?? null,
    boilsOpen: open,
    assumptions: [
      ...(read?.assumptions ?? []),
      ...found.assumptions,
      ...(shut ? shut.assumptions : ['The cap is not known: boiling is told for an open system.']),
    ],
    warnings: [...(read?.warnings ?? []), ...found.warnings, ...boils.warnings.filter(({ code }) => code !== 'at-least')],
    sources: [...new Set([...found.sources, ...boils.sources])],
  };
}
