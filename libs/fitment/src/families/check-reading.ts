import { type FamilyFeature, type FeatureUnit, type NumberFeature } from './part-family.types.ts';

/** Whether a reading makes sense; if not, why, and what was probably meant. */
export type ReadingCheck = { readonly ok: true } | { readonly ok: false; readonly message: string };

/** Slips that happen: what was typed, and the figure it stands for. */
const slips: Readonly<Partial<Record<FeatureUnit, readonly { readonly words: string; readonly toUnit: (typed: number) => number }[]>>> = {
  mm: [
    { words: 'in cm', toUnit: (typed) => typed * 10 },
    { words: 'in inches', toUnit: (typed) => typed * 25.4 },
    { words: 'with the point one place off', toUnit: (typed) => typed / 10 },
  ],
  '°C': [{ words: 'in °F', toUnit: (typed) => (typed - 32) / 1.8 }],
  kPa: [
    { words: 'in bar', toUnit: (typed) => typed * 100 },
    { words: 'in psi', toUnit: (typed) => typed * 6.894757293168361 },
  ],
  kΩ: [{ words: 'in Ω', toUnit: (typed) => typed / 1000 }],
};

/**
 * Checks one reading against what such a part can have at all, and says what may have been meant.
 *
 * @param family - name of the part family, for the words
 * @param feature - what was read
 * @param reading - the value, a number in the feature's unit or a category's key
 * @returns ok, or a message; nothing throws
 * @example
 * checkReading('thermostat', flangeDiameter, { value: 5 });
 * // { ok: false, message: 'A flange diameter of 5 mm makes no sense for a thermostat: it is 30 to 100 mm. If 5 was in cm, type 50.' }
 */
export function checkReading(family: string, feature: FamilyFeature, { value }: { readonly value: unknown }): ReadingCheck {
  if (feature.kind === 'number') return checkFigure(family, feature, { value });
  if (feature.values.some(({ key }) => key === value)) return { ok: true };
  const names = feature.values.map(({ name }) => name).join(', ');
  return { ok: false, message: `The ${feature.name} of a ${family} is one of these: ${names}. Choose one, or 'could not be read'.` };
}

function checkFigure(family: string, feature: NumberFeature, { value }: { readonly value: unknown }): ReadingCheck {
  const { name, unit, plausible } = feature;
  const range = `${plausible.low} to ${withUnit(plausible.high, unit)}`;
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    return { ok: false, message: `The ${name} of a ${family} is a number: type one from ${range}, or 'could not be read'.` };
  }
  const isCounted = unit !== 'count' || Number.isInteger(value);
  if (isCounted && isInside(value, feature)) return { ok: true };
  if (!isCounted) return { ok: false, message: `The number of ${name} is counted: type a whole number.` };
  const meant = (slips[unit] ?? []).map(({ words, toUnit }) => ({ words, figure: Number(toUnit(value).toPrecision(3)) }));
  const guess = meant.find(({ figure }) => isInside(figure, feature));
  const hint = guess === undefined ? 'Read it again.' : `If ${value} was ${guess.words}, type ${guess.figure}.`;
  const article = /^[aeiou]/.test(name) ? 'An' : 'A';
  return { ok: false, message: `${article} ${name} of ${withUnit(value, unit)} makes no sense for a ${family}: it is ${range}. ${hint}` };
}

function isInside(figure: number, { plausible }: NumberFeature): boolean {
  return figure >= plausible.low && figure <= plausible.high;
}

function withUnit(figure: number, unit: FeatureUnit): string {
  return unit === 'count' ? String(figure) : `${figure} ${unit}`;
}
