import { type Sample } from '../types/sample.ts';

export type TypedReadings = { ok: true; samples: Sample[] } | { ok: false; problem: string };

const FEWEST = 4;
const LINE = /^(?:(\d{1,3}):([0-5]\d)|(\d+(?:[.,]\d+)?)(?: ?min)?)[\s;:=,]+(-?\d+(?:[.,]\d+)?) ?°?C?$/i;

/**
 * Reads figures that someone took from a tester by hand, one pair on a line: minutes (2.5 or 2:30) and coolant in °C.
 *
 * @example readTypedReadings('0 18\n1:30 27\n3 36\n4.5 44') // { ok: true, samples: [{ timeS: 0, coolantC: 18 }, { timeS: 90, … }, …] }
 */
export function readTypedReadings(text: string): TypedReadings {
  const samples: Sample[] = [];
  for (const [index, raw] of text.split(/\r?\n/).entries()) {
    const line = raw.trim();
    if (line === '') continue;
    const match = LINE.exec(line);
    if (!match)
      return { ok: false, problem: `Line ${index + 1}, '${line}': write the minutes and the temperature in °C, such as 2:30 41.` };
    const [, minutes, seconds, decimal, temp] = match;
    const timeS = minutes === undefined ? figure(decimal) * 60 : Number(minutes) * 60 + Number(seconds);
    const last = samples[samples.length - 1];
    if (last && timeS <= last.timeS)
      return { ok: false, problem: `Line ${index + 1}, '${line}': the time must be later than on the line before.` };
    samples.push({ timeS, coolantC: figure(temp) });
  }
  if (samples.length < FEWEST)
    return { ok: false, problem: `At least ${FEWEST} readings are needed; one a minute from a cold start is good.` };
  return { ok: true, samples };
}

function figure(text: string | undefined): number {
  return Number((text ?? '').replace(',', '.'));
}
