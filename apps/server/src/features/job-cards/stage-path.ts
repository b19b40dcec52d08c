import { STAGE_MOVES, type Stage } from '#libs/checklist';

type Step = readonly [from: Stage, to: Stage];

const AHEAD: readonly Step[] = STAGE_MOVES.filter(({ kind }) => kind !== 'by-the-tool').map(({ from, to }) => [from, to]);

/**
 * Corrections: a step that was ticked by mistake and taken back undoes the stage that it brought. The database knows these pairs
 * beside the moves themselves.
 */
export const STAGE_CORRECTIONS: readonly Step[] = STAGE_MOVES.filter(({ kind }) => kind === 'forward' || kind === 'early-end').map(
  ({ from, to }) => [to, from],
);

function shortest(from: Stage, to: Stage, steps: readonly Step[]): readonly Stage[] {
  const ways = new Map<Stage, readonly Stage[]>([[from, []]]);
  const queue: Stage[] = [from];
  for (let at = queue.shift(); at !== undefined && at !== to; at = queue.shift()) {
    const way = ways.get(at) ?? [];
    for (const [start, end] of steps) {
      if (start !== at || ways.has(end)) continue;
      ways.set(end, [...way, end]);
      queue.push(end);
    }
  }
  return ways.get(to) ?? [];
}

/**
 * The shortest way from one stage to another, without the start. A card may reach a stage by leaving one out (filled and run hot
 * in one go): its history then shows both. What was taken back leads back along corrections.
 *
 * @returns Empty where there is no way, or none is needed
 * @example stagePath('closed-up', 'run-hot') // ['filled', 'run-hot']
 * @example stagePath('keys-out', 'settling', { isTakenBack: true }) // ['settling']
 */
export function stagePath(from: Stage, to: Stage, { isTakenBack = false }: { isTakenBack?: boolean } = {}): readonly Stage[] {
  if (isTakenBack) return shortest(from, to, [...STAGE_CORRECTIONS, ...AHEAD, ['squared', 'keys-out']]);
  return shortest(from, to, AHEAD);
}
