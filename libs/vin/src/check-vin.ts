import { vinCheckDigit } from './vin-check-digit.ts';
import { vinFormProblems } from './vin-form-problems.ts';
import { vinModelYears } from './vin-model-years.ts';
import { vinRegion, type VinRegion } from './vin-region.ts';

/** What could be told about a vehicle identification number. */
export interface VinCheck {
  /** The number as it was checked: upper case, without spaces and hyphens. */
  readonly vin: string;
  /** Seventeen allowed characters. Says nothing about the check digit. */
  readonly wellFormed: boolean;
  /** What is wrong, in words; empty when nothing is. */
  readonly problems: readonly string[];
  readonly checkDigit: {
    /** What position 9 should be; null when the number isn't well formed. */
    readonly expected: string | null;
    readonly found: string | null;
    readonly matches: boolean | null;
    /** Whether a mismatch proves a mistake: only where the digit is compulsory. Elsewhere no check is available. */
    readonly binding: boolean;
  };
  /** Years that position 10 can stand for, ascending. */
  readonly modelYears: readonly number[];
  /** Whether the maker had to state the year; false means that `modelYears` is only a possibility. */
  readonly modelYearStated: boolean;
  readonly region: VinRegion;
}

/**
 * Checks a vehicle identification number: form, check digit where one is compulsory, possible model years.
 *
 * The check digit binds in North America (49 CFR 565.15, read) and in China (from memory). ISO 3779 has none, so a European
 * number that fails the sum is not wrong: no check is available.
 *
 * @param typed - the number as typed; spaces and hyphens are ignored, small letters are taken as capitals
 * @param options - `latestModelYear`: last model year that can exist yet (this year plus one)
 * @returns form, check digit and years with problems in words; bad numbers are an answer, nothing throws
 * @example
 * checkVin('1m8gdm9axkp042788').checkDigit; // { expected: 'X', found: 'X', matches: true, binding: true }
 */
export function checkVin(typed: string, options: { readonly latestModelYear?: number | undefined } = {}): VinCheck {
  const vin = typed.replace(/[\s-]/gu, '').toUpperCase();
  const region = vinRegion(vin);
  const formProblems = vinFormProblems(vin);
  const binding = region === 'north-america' || region === 'china';
  if (formProblems.length > 0) {
    const checkDigit = { expected: null, found: null, matches: null, binding };
    return { vin, wellFormed: false, problems: formProblems, checkDigit, modelYears: [], modelYearStated: false, region };
  }
  const expected = vinCheckDigit(vin);
  const found = vin.charAt(8);
  const modelYears = vinModelYears(vin, options.latestModelYear);
  const modelYearStated = region === 'north-america' && modelYears.length > 0;
  const problems = [
    ...(binding && expected !== found ? [checkDigitProblem(expected, found)] : []),
    ...(region === 'north-america' && modelYears.length === 0 ? [modelYearProblem(vin.charAt(9))] : []),
  ];
  return {
    vin,
    wellFormed: true,
    problems,
    checkDigit: { expected, found, matches: expected === found, binding },
    modelYears,
    modelYearStated,
    region,
  };
}

function checkDigitProblem(expected: string, found: string): string {
  return `The check digit in position 9 is ${found}, the other characters ask for ${expected}: one of the 17 is probably mistyped. Compare them with the plate.`;
}

function modelYearProblem(code: string): string {
  return `Position 10 is ${code}, which stands for no model year that can exist yet: compare it with the plate.`;
}
