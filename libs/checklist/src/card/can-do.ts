import { HOLD_WORDS, type HoldKey } from '../holds/holds.ts';
import { STAGE_MOVES } from '../stages/stage-moves.ts';
import { STAGE_WORDS } from '../stages/stages.ts';
import { findStep } from '../template/steps-of.ts';
import { type FigureName, type Step } from '../template/template.ts';
import { type CardState, type DifferenceCode } from './card-state.ts';
import { isOpenHold } from './derive-holds.ts';
import { isComplete } from './derive-step.ts';
import { stopWords } from './derive-checks.ts';

export interface Obstacle {
  readonly code: DifferenceCode;
  readonly hold: HoldKey | null;
  readonly why: string;
}

export interface CanDo {
  readonly can: boolean;
  /** Why not, one sentence each; empty when it can be done. */
  readonly why: readonly string[];
  /** The hold points in the way. */
  readonly holds: readonly HoldKey[];
  /** Figures the step shows that nobody has entered yet: asked for, they stop nothing. */
  readonly missingFigures: readonly FigureName[];
}

/**
 * Whether a step can be done now, and if not, why, in words.
 *
 * @param card The card as it stands
 * @param stepKey The step
 * @param context The figures of this car that are known
 * @returns Yes or no with reasons; steps of a phase are otherwise in free order
 * @example canDo(emptyCard(THERMOSTAT_JOB), 'drained').holds // ['safe-to-open']
 */
export function canDo(card: CardState, stepKey: string, context: { readonly figures?: readonly FigureName[] } = {}): CanDo {
  const step = findStep(card.template, stepKey);
  if (!step) return { can: false, why: [`This card has no step '${stepKey}'.`], holds: [], missingFigures: [] };
  const state = card.steps[stepKey];
  const isDone = state !== undefined && (isComplete(state.state) || state.state === 'not-applicable' || state.state === 'let-go');
  const done = isDone
    ? [`Already ${state.state === 'not-applicable' ? 'marked as not on this car' : 'done'} by ${state.by ?? 'someone'}.`]
    : [];
  const found = obstacles(card, step);
  const known = context.figures ?? [];
  return {
    can: found.length === 0 && !isDone,
    why: [...done, ...found.map((one) => one.why)],
    holds: found.flatMap((one) => one.hold ?? []),
    missingFigures: (step.figures ?? []).filter((figure) => !known.includes(figure)),
  };
}

/** What stands in the way of doing a step: shut hold points, an answer that ends the work, a stage the keys can't leave from. */
export function obstacles(card: CardState, step: Step): readonly Obstacle[] {
  const needed = [...(step.behind ?? []), ...(card.isOpened ? (step.behindOnceOpened ?? []) : [])];
  const shut = needed
    .filter((key) => !isOpenHold(card.holds[key]))
    .map((key): Obstacle => {
      const { title, protects, opensBy } = HOLD_WORDS[key];
      return {
        code: 'behind-hold',
        hold: key,
        why: `'${title}' is shut, and it comes before ${protects}. ${card.holds[key]?.why ?? opensBy}`,
      };
    });
  const isWork = needed.length > 0 || step.hold !== undefined || step.runsEngine === true;
  const stops = isWork && !bringsKeysOut(card, step) ? stopWords(card.template, card.steps) : [];
  return [...shut, ...stops.map((why): Obstacle => ({ code: 'not-now', hold: null, why })), ...keysObstacle(card, step)];
}

function keysObstacle(card: CardState, step: Step): readonly Obstacle[] {
  if (!bringsKeysOut(card, step) || card.stage === 'keys-out') return [];
  const mayLeave = STAGE_MOVES.some((move) => move.to === 'keys-out' && move.from === card.stage && move.kind !== 'by-the-tool');
  const isBefore = card.stage === 'expected' || card.stage === 'spoken-of';
  if (mayLeave) return [];
  const why = isBefore
    ? 'The car is not here yet: take it in first.'
    : `From '${STAGE_WORDS[card.stage]}' the car can't leave: it has to be closed, filled and run hot first.`;
  return [{ code: 'not-now', hold: null, why }];
}

function bringsKeysOut(card: CardState, step: Step): boolean {
  return card.template.stageMarks.some((mark) => mark.stage === 'keys-out' && mark.steps.includes(step.key));
}
