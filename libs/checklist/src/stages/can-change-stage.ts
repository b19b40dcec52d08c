import { type Answer, no, YES } from '../words/answer.ts';
import { STAGE_MOVES, type StageMove } from './stage-moves.ts';
import { STAGES, STAGE_WORDS, type Stage, stageRank } from './stages.ts';

export interface StageChangeContext {
  /** Who asks: a person, or the tool when it finds nothing owed (or something owed again). */
  readonly by: 'person' | 'tool';
  /** The stages of the job's template: those it lacks may be stepped over. All of them if left out. */
  readonly stages?: readonly Stage[];
  /** How many debts are still open. Default 0. */
  readonly openDebts?: number;
  /** Whether the unfinished checks have been dated as debts: needed to let a car go straight from run hot or settling. */
  readonly hasDatedDebt?: boolean;
}

/**
 * Whether a job may go from one stage to another, and if not, why.
 *
 * @param from The stage now
 * @param to The stage asked for
 * @param context Who asks, the template's stages, what is owed
 * @returns `{ can: true }`, or `{ can: false, why }` in words
 * @example canChangeStage('opened', 'keys-out', { by: 'person' }).can // false
 */
export function canChangeStage(from: Stage, to: Stage, context: StageChangeContext): Answer {
  if (from === to) return no(`The job is already at '${STAGE_WORDS[to]}'.`);
  const move = STAGE_MOVES.find((m) => m.from === from && m.to === to);
  if (!move) return stepOver(from, to, context.stages ?? STAGES);
  return mayMove(move, context);
}

function mayMove(move: StageMove, { by, openDebts = 0, hasDatedDebt = false }: StageChangeContext): Answer {
  if (move.kind === 'by-the-tool') {
    if (by !== 'tool') return no('Squared is set by the tool alone, when nothing is owed either way.');
    if (move.to === 'squared' && openDebts > 0) return no(`Not squared: ${openDebts} still owed.`);
    if (move.to === 'keys-out' && openDebts === 0) return no('Nothing is owed: the job stays squared.');
    return YES;
  }
  if (move.kind === 'early-end' && move.from !== 'standing' && !hasDatedDebt) {
    return no('What has not been checked yet needs a date before the keys go out: the cold level and the log after the repair.');
  }
  return YES;
}

function stepOver(from: Stage, to: Stage, stages: readonly Stage[]): Answer {
  const words = `From '${STAGE_WORDS[from]}' the job can't go to '${STAGE_WORDS[to]}'.`;
  if (to === 'squared' || from === 'squared' || to === 'fell-through' || from === 'fell-through') return no(words);
  const [a, b] = [stageRank(from), stageRank(to)];
  if (b <= a) return no(words);
  const between = STAGES.slice(a + 1, b).filter((stage) => stages.includes(stage));
  if (between.length === 0) return YES;
  return no(`${words} Before it: ${between.map((stage) => STAGE_WORDS[stage]).join(', ')}.`);
}
