import { formatFigure, formatTemperature } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { exactlyOne } from '../checks/exactly-one.ts';
import { GLYCOL_NAME, type Glycol } from '../glycol.ts';
import { refuse, type Outcome, type Problem } from '../outcome.ts';
import { FREEZING_CURVE } from './freezing-curve.ts';
import { strengthOfMass } from './strength-of-mass.ts';
import { type Strength, type StrengthInput } from './strength.ts';

/** Makers of heavy equipment ask for no more than this much glycol (read in an operator manual); nothing above is credited. */
const MOST_VOLUME_PERCENT = 60;

function inside(field: string, name: string): string {
  return field === '' ? name : `${field}.${name}`;
}

function beyondTable(glycol: Glycol, limit: number, words: { field: string; limitText: string }): Problem {
  return {
    code: 'beyond-table',
    kind: 'impossible',
    field: words.field,
    limit,
    message:
      `The published freezing table of ${GLYCOL_NAME[glycol]} ends at ${words.limitText}. ` +
      `Beyond it the sources disagree and more glycol soon protects less, so nothing is credited. Give a value inside the table.`,
  };
}

function ofVolume(glycol: Glycol, volumePercent: number, field: string): Outcome<{ strength: Strength }> {
  const curve = FREEZING_CURVE[glycol];
  if (volumePercent > MOST_VOLUME_PERCENT) {
    const limitText = `${formatFigure(curve.endVolumePercent, 1)} volume %; ${MOST_VOLUME_PERCENT} is the most that is accepted`;
    return refuse(beyondTable(glycol, MOST_VOLUME_PERCENT, { field, limitText }));
  }
  if (volumePercent > curve.endVolumePercent) {
    const freezingPointC = curve.endFreezingPointC;
    return { ok: true, strength: { volumePercent, massPercent: null, freezingPointC, isAtLeast: true } };
  }
  const massPercent = curve.massPercentOfVolume(volumePercent);
  return { ok: true, strength: { volumePercent, massPercent, freezingPointC: curve.freezingPointC(volumePercent), isAtLeast: false } };
}

function ofMass(glycol: Glycol, massPercent: number, field: string): Outcome<{ strength: Strength }> {
  const { endMassPercent } = FREEZING_CURVE[glycol];
  if (massPercent > endMassPercent) {
    return refuse(beyondTable(glycol, endMassPercent, { field, limitText: `${formatFigure(endMassPercent, 0)} mass %` }));
  }
  return { ok: true, strength: strengthOfMass(glycol, massPercent) };
}

function ofFreezingPoint(glycol: Glycol, freezingPointC: number, field: string): Outcome<{ strength: Strength }> {
  const curve = FREEZING_CURVE[glycol];
  if (freezingPointC < curve.endFreezingPointC) {
    const limitText = formatTemperature(curve.endFreezingPointC, { unit: '°C', decimals: 1 });
    return refuse(beyondTable(glycol, curve.endFreezingPointC, { field, limitText }));
  }
  const volumePercent = curve.volumePercentOfFreezingPoint(freezingPointC);
  return {
    ok: true,
    strength: { volumePercent, massPercent: curve.massPercentOfVolume(volumePercent), freezingPointC, isAtLeast: false },
  };
}

/**
 * A mixture's strength from any one way of giving it: volume %, mass % or freezing point (the dilute side).
 *
 * @param glycol Which glycol
 * @param input Exactly one of the three, of pure glycol
 * @param context Name of the field that holds them, for messages; empty where they stand by themselves
 * @returns The strength, or why it is refused: not exactly one, not a number, or beyond the published table
 * @example toStrength('ethylene', { massPercent: 50 }, { field: 'target' }) // { ok: true, strength: { volumePercent: 47.6, … } }
 */
export function toStrength(glycol: Glycol, input: StrengthInput, context: { readonly field: string }): Outcome<{ strength: Strength }> {
  const { volumePercent, massPercent, freezingPointC } = input;
  const one = exactlyOne({ volumePercent, massPercent, freezingPointC }, context.field === '' ? 'volumePercent' : context.field);
  if (one) return refuse(one);
  if (typeof volumePercent === 'number') {
    const field = inside(context.field, 'volumePercent');
    const problem = checkNumber(volumePercent, { field, name: 'The volume share of glycol', unit: '%', least: 0, most: 100 });
    return problem ? refuse(problem) : ofVolume(glycol, volumePercent, field);
  }
  if (typeof massPercent === 'number') {
    const field = inside(context.field, 'massPercent');
    const problem = checkNumber(massPercent, { field, name: 'The mass share of glycol', unit: '%', least: 0, most: 100 });
    return problem ? refuse(problem) : ofMass(glycol, massPercent, field);
  }
  const field = inside(context.field, 'freezingPointC');
  const given = freezingPointC ?? Number.NaN;
  const problem = checkNumber(given, { field, name: 'The freezing point', unit: '°C', most: 0 });
  return problem ? refuse(problem) : ofFreezingPoint(glycol, given, field);
}
