import { readClock, type ClockParts } from './clock.ts';

const DAY_S = 86_400;
const HOUR_S = 3600;
const HALF_DAY_S = 43_200;
/** More first fields than this in one log can only be minutes. */
const SEVERAL = 3;

/** Seconds of each row (NaN where there is none), running on through midnight; or why the column can't be read. */
export type ReadTimes = { timesS: Float64Array; note: string | null } | { problem: string };

/**
 * Reads a column of clocks. Dates are not needed: the clock running back by most of a day is midnight. Fractions written without their
 * leading zeros (39.66512 for 39.066512) show in that only so the time never runs back.
 */
export function readClockColumn(cells: readonly string[]): ReadTimes {
  const parts = cells.map(readClock);
  const known = parts.filter((part) => part !== null);
  const twoFields = known.filter(({ fields }) => fields === 2).length > known.length / 2;
  if (twoFields && !minutesAndSeconds(known)) {
    return { problem: 'has only two fields (07:03): minutes and seconds, or hours and minutes? Save the log with seconds.' };
  }
  const used = parts.map((part) => (part && (part.fields === 2) === twoFields ? part : null));
  const longest = Math.max(0, ...known.slice(0, 5000).map(({ fraction }) => fraction.length));
  const decimal = unrolled(used, { asDecimal: true, longest, twoFields });
  const plain = longest >= 4 ? unrolled(used, { asDecimal: false, longest, twoFields }) : decimal;
  const notes: string[] = [];
  if (plain.backSteps < decimal.backSteps)
    notes.push(`fractions of a second are written without leading zeros and were read as 1/${10 ** longest} s`);
  const chosen = plain.backSteps < decimal.backSteps ? plain : decimal;
  if (chosen.wraps > 0) notes.push(twoFields ? 'the hours are missing and were counted on' : 'the clock passes midnight');
  return { timesS: chosen.timesS, note: notes.length > 0 ? notes.join('; ') : null };
}

function minutesAndSeconds(parts: readonly ClockParts[]): boolean {
  if (parts.some(({ fraction }) => fraction !== '')) return true;
  return new Set(parts.map(({ seconds }) => Math.floor(seconds / 60))).size > SEVERAL;
}

interface Reading {
  asDecimal: boolean;
  longest: number;
  twoFields: boolean;
}

function unrolled(parts: readonly (ClockParts | null)[], { asDecimal, longest, twoFields }: Reading) {
  const timesS = new Float64Array(parts.length).fill(Number.NaN);
  let added = 0;
  let last = Number.NEGATIVE_INFINITY;
  let backSteps = 0;
  let wraps = 0;
  parts.forEach((part, row) => {
    if (!part) return;
    const fraction = part.fraction === '' ? 0 : Number(part.fraction) / 10 ** (asDecimal ? part.fraction.length : longest);
    const raw = part.seconds + fraction;
    const back = last - (raw + added);
    const wrap = wrapOf(back, twoFields);
    if (wrap > 0) wraps += 1;
    added += wrap;
    const timeS = raw + added;
    if (timeS < last) backSteps += 1;
    last = timeS;
    timesS[row] = timeS;
  });
  return { timesS, backSteps, wraps };
}

function wrapOf(backS: number, twoFields: boolean): number {
  if (twoFields) return backS > HOUR_S / 2 && backS <= HOUR_S ? HOUR_S : 0;
  if (backS > 0.75 * DAY_S && backS <= DAY_S) return DAY_S;
  return Math.abs(backS - HALF_DAY_S) < HALF_DAY_S / 60 ? HALF_DAY_S : 0;
}
