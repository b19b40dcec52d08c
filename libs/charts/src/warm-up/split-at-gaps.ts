import { type WarmUpSample } from './warm-up-data.ts';

const GAP_FACTOR = 6;
const LEAST_GAP_MIN = 0.25;

/**
 * Cuts a log where readings are missing: where the pause is more than six times the usual one and more than a quarter of a minute.
 * The line between two pieces is assumed, not measured.
 */
export function splitAtGaps(samples: readonly WarmUpSample[]): WarmUpSample[][] {
  const ordered = [...samples].sort((a, b) => a.minute - b.minute);
  const pauses = ordered.slice(1).map(({ minute }, index) => minute - (ordered[index]?.minute ?? minute));
  const usual = [...pauses].sort((a, b) => a - b)[Math.floor(pauses.length / 2)] ?? 0;
  const longest = Math.max(usual * GAP_FACTOR, LEAST_GAP_MIN);
  const pieces: WarmUpSample[][] = [];
  ordered.forEach((sample, index) => {
    const piece = pieces.at(-1);
    if (piece === undefined || (pauses[index - 1] ?? 0) > longest) pieces.push([sample]);
    else piece.push(sample);
  });
  return pieces;
}
