import { type KneeFit } from '../knee/fit-knee.ts';
import { type Findings } from '../verdict/findings.ts';
import { sayDuration, sayTemp } from './say.ts';

/** The knee and the level in words, and why some valves get no opening temperature. */
export function seenKnee({ level, kind }: Findings, knee: KneeFit): string[] {
  const words = [`The climb ends clearly at ${sayTemp(knee.tempC)} after ${sayDuration(knee.timeS)}.`];
  if (level) words.push(`From there it keeps to ${sayTemp(level.levelC)} (${Math.round(level.lowC)} to ${Math.round(level.highC)} °C).`);
  if (kind === 'unknown') words.push('The kind of thermostat is not known, so no opening temperature is given.');
  else if (kind !== 'wax') words.push('This kind of valve has no single opening temperature, so none is given.');
  return words;
}
