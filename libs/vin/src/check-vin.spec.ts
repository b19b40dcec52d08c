import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { checkVin } from './check-vin.ts';
import { vinCheckDigit } from './vin-check-digit.ts';
import { characterValues, modelYearCodes } from './vin-tables.ts';

const alphabet = Object.keys(characterValues);
const vinOfRegion = (first: readonly string[]) =>
  fc
    .tuple(fc.constantFrom(...first), fc.array(fc.constantFrom(...alphabet), { minLength: 16, maxLength: 16 }))
    .map(([head, tail]) => head + tail.join(''));

describe('published examples', () => {
  it.each([
    // 49 CFR 565.15(c), the regulation's own example (read); sum 411, 411 mod 11 = 4.
    ['1G4AH59H45G118341', '4', [2005]],
    // Widely printed examples (from memory, recomputed): sums 351 and 89.
    ['1M8GDM9AXKP042788', 'X', [1989]],
    ['11111111111111111', '1', [2001]],
  ])('%s has check digit %s', (vin, digit, modelYears) => {
    const check = checkVin(vin);
    expect(check.wellFormed).toBe(true);
    expect(check.problems).toEqual([]);
    expect(check.checkDigit).toEqual({ expected: digit, found: digit, matches: true, binding: true });
    expect(check.modelYears).toEqual(modelYears);
  });
});

describe('where the check digit binds', () => {
  it('names a mistyped North American number', () => {
    const check = checkVin('1G4AH59H55G118341');
    expect(check.checkDigit).toEqual({ expected: '4', found: '5', matches: false, binding: true });
    expect(check.problems).toHaveLength(1);
    expect(check.problems[0]).toContain('position 9 is 5, the other characters ask for 4');
  });

  it('binds in China', () => {
    const check = checkVin('LAAAAAAA0AA000001');
    expect(check.checkDigit.binding).toBe(true);
    expect(check.checkDigit.matches).toBe(false);
    expect(check.problems).toHaveLength(1);
  });

  it.each(['W', 'S', 'V', 'Z'])('does not bind in Europe (%sXX…)', (first) => {
    const check = checkVin(`${first}XXZZZ00ZA0000001`);
    expect(check.checkDigit.binding).toBe(false);
    expect(check.checkDigit.matches).toBe(false);
    expect(check.problems).toEqual([]);
    expect(check.wellFormed).toBe(true);
  });

  it('does not bind in Japan', () => {
    expect(checkVin('JXX00000000000000').checkDigit.binding).toBe(false);
  });

  it('does not use modulo 10, which some published code does: sum 411 would give 1', () => {
    expect(vinCheckDigit('1G4AH59H45G118341')).not.toBe('1');
  });
});

describe('form', () => {
  it('ignores spaces, hyphens and small letters', () => {
    expect(checkVin(' 1g4-ah59h 45g118341 ').vin).toBe('1G4AH59H45G118341');
  });

  it.each([
    ['1M8GDM9AXKPO42788', 'Position 12 is the letter O, which no VIN has: probably the digit 0.'],
    ['IM8GDM9AXKP042788', 'Position 1 is the letter I, which no VIN has: probably the digit 1.'],
    ['1M8GDM9AXKPQ42788', 'Position 12 is the letter Q, which no VIN has: probably the digit 0.'],
  ])('names the look-alike in %s', (vin, problem) => {
    const check = checkVin(vin);
    expect(check.wellFormed).toBe(false);
    expect(check.problems).toEqual([problem]);
    expect(check.checkDigit).toMatchObject({ expected: null, found: null, matches: null });
    expect(check.modelYears).toEqual([]);
  });

  it.each([
    ['1M8GDM9AXKP04278', '16: 1 missing'],
    ['1M8GDM9AXKP0427888', '18: 1 too many'],
    ['', 'No VIN was given'],
    ['🚗'.repeat(17), "Position 1 is '🚗'"],
  ])('says what is wrong with %p', (vin, words) => {
    const check = checkVin(vin);
    expect(check.wellFormed).toBe(false);
    expect(check.problems.join(' ')).toContain(words);
  });
});

describe('model years', () => {
  it('takes the later cycle when position 7 is a letter, in North America', () => {
    expect(checkVin('1AAAAAA00A0000000').modelYears).toEqual([2010]);
    expect(checkVin('1AAAAA000A0000000').modelYears).toEqual([1980]);
  });

  it('leaves both open elsewhere and says that it is only a possibility', () => {
    const check = checkVin('WXXZZZ00ZA0000001');
    expect(check.modelYears).toEqual([1980, 2010]);
    expect(check.modelYearStated).toBe(false);
  });

  it('leaves out years that cannot exist yet', () => {
    expect(checkVin('WXXZZZ00ZY0000001', { latestModelYear: 2027 }).modelYears).toEqual([2000]);
  });

  it('has thirty codes without I, O, Q, U, Z and 0, ending 2009 and 2039', () => {
    expect(modelYearCodes).toHaveLength(30);
    expect(modelYearCodes).not.toMatch(/[IOQUZ0]/);
    expect(checkVin('WXXZZZ00Z99000001').modelYears).toEqual([2009, 2039]);
  });

  it('names a year code that does not exist on a North American number', () => {
    expect(checkVin('1AAAAAA00U0000000').problems.join(' ')).toContain('Position 10 is U');
  });
});

describe('properties', () => {
  it('one wrong character is always found where the digit binds, unless both weigh the same', () => {
    fc.assert(
      fc.property(vinOfRegion(['1', '2', '3', '4', '5', 'L']), fc.nat(16), fc.constantFrom(...alphabet), (seed, position, other) => {
        const vin = seed.slice(0, 8) + vinCheckDigit(seed) + seed.slice(9);
        const changed = vin.slice(0, position) + other + vin.slice(position + 1);
        fc.pre(position !== 8 && characterValues[other] !== characterValues[vin.charAt(position)] && position > 0);
        return checkVin(vin).checkDigit.matches === true && checkVin(changed).checkDigit.matches === false;
      }),
    );
  });

  it('answers any text without throwing', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const check = checkVin(text);
        return check.wellFormed === (check.checkDigit.expected !== null) && (check.wellFormed || check.problems.length > 0);
      }),
    );
  });
});
