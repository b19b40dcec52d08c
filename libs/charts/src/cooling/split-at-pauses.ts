import { type CoolingPoint } from './cooling-data.ts';

/** Readings further apart than this say nothing certain about what lies between: common practice, no source. */
const LONGEST_PAUSE_MIN = 90;

/** Cuts readings where nobody measured for long; what lies between two pieces is assumed. */
export function splitAtPauses<P extends CoolingPoint>(readings: readonly P[]): P[][] {
  const pieces: P[][] = [];
  readings.forEach((reading, index) => {
    const last = readings[index - 1];
    const piece = pieces.at(-1);
    if (piece === undefined || last === undefined || reading.clockMin - last.clockMin > LONGEST_PAUSE_MIN) pieces.push([reading]);
    else piece.push(reading);
  });
  return pieces;
}
