import { UNITS_OF, type TimeUnit, type Unit } from './units.ts';
import { type Quantity } from './quantity.ts';
import { TIME_UNIT_WORDS, UNIT_WORDS } from './unit-words.ts';

/**
 * Bare spelling of a unit: one sign for ℃ and °C, no brackets, no degree sign, also where a wrong character set has torn it (Â°C, �C).
 */
function bare(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/µ|μ/g, 'u')
    .replace(/[^a-z0-9%/]+/g, '');
}

/** The unit that a text names for this quantity, or null. */
export function readUnit(text: string, quantity: Quantity): Unit | null {
  const word = bare(text);
  const unit = Object.hasOwn(UNIT_WORDS, word) ? UNIT_WORDS[word] : undefined;
  return unit !== undefined && UNITS_OF[quantity].includes(unit) ? unit : null;
}

/** The unit of time that a text names, or null. */
export function readTimeUnit(text: string): TimeUnit | null {
  const word = bare(text);
  return (Object.hasOwn(TIME_UNIT_WORDS, word) ? TIME_UNIT_WORDS[word] : undefined) ?? null;
}
