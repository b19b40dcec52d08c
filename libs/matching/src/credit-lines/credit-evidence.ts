import { type Decimal, toDecimal } from '#libs/money';
import { type Evidence } from '../candidates/evidence.types.ts';
import { type KnownNumbers } from '../candidates/find-candidates.ts';
import { normaliseReference, referencesInText } from '../candidates/normalise-reference.ts';
import { dayNumber } from '../lines/day-number.ts';
import { type CreditLine, type CreditUnit } from './credit-matching.types.ts';

/** Every reference and part number that the units have. */
export function knownNumbers(units: readonly CreditUnit[]): KnownNumbers {
  return {
    references: new Set(units.flatMap(({ references }) => normalised(references))),
    parts: new Set(units.flatMap(({ parts }) => normalised(parts))),
  };
}

/**
 * What a line can be matched by. Words of its text count only where they are numbers that exist.
 *
 * @param line - a credit line
 * @param known - numbers of the units
 */
export function lineEvidence(line: CreditLine, known: KnownNumbers): Evidence {
  const words = referencesInText(line.text ?? '');
  const references = [...normalised([line.reference ?? '']), ...words.filter((word) => known.references.has(word))];
  const stated = normalised([line.part ?? '']);
  const parts = stated.length > 0 ? stated : words.filter((word) => known.parts.has(word));
  const perPiece = toDecimal(line.net).div(line.quantity);
  return { references, parts, hundredths: hundredthsOf(perPiece), day: dayOf(line.date), kind: null };
}

/**
 * What a unit can be matched by.
 *
 * @param unit - a unit
 * @param amount - what a line is expected to give for it
 */
export function unitEvidence(unit: CreditUnit, amount: Decimal): Evidence {
  return {
    references: normalised(unit.references),
    parts: normalised(unit.parts),
    hundredths: hundredthsOf(amount),
    day: dayOf(unit.handedOverOn),
    kind: null,
  };
}

/** For comparing only; money is never computed from it. */
function hundredthsOf(amount: Decimal): number {
  return Math.round(amount.times(100).toNumber());
}

function dayOf(date: string | null | undefined): number | null {
  return date === null || date === undefined ? null : dayNumber(date);
}

function normalised(numbers: readonly string[]): string[] {
  return numbers.map(normaliseReference).filter((number) => number !== '');
}
