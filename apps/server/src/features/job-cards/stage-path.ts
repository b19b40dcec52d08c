import { STAGE_MOVES, type Stage } from '#libs/checklist';

/**
 * The shortest way from one stage to another along moves that exist, without the start. A card may reach a stage by leaving one
 * out (filled and run hot in one go): its history then shows both.
 *
 * @returns Empty where there is no way, or none is needed
 * @example stagePath('closed-up', 'run-hot') // ['filled', 'run-hot']
 */
export function stagePath(from: Stage, to: Stage): readonly Stage[] {
  const ways = new Map<Stage, readonly Stage[]>([[from, []]]);
  const queue: Stage[] = [from];
  for (let at = queue.shift(); at !== undefined && at !== to; at = queue.shift()) {
    const way = ways.get(at) ?? [];
    for (const move of STAGE_MOVES) {
      if (move.from !== at || move.kind === 'by-the-tool' || ways.has(move.to)) continue;
      ways.set(move.to, [...way, move.to]);
      queue.push(move.to);
    }
  }
  return ways.get(to) ?? [];
}
