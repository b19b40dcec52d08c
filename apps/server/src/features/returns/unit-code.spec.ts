import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { bareCode, codeProblem, unitCode, unitCodeText } from './unit-code.ts';

const codes = fc.array(fc.nat(22), { minLength: 5, maxLength: 5 }).map((picks) => {
  const left = [...picks];
  return unitCode(() => left.shift() ?? 0);
});
const MISTYPED = /mistyped/;

describe('unitCode', () => {
  it('is read back from any way of typing it', () => {
    fc.assert(
      fc.property(codes, (code) => {
        expect(bareCode(` ${unitCodeText(code).toLowerCase()} `)).toBe(code);
        expect(codeProblem(code)).toContain('No piece has the code');
      }),
    );
  });

  it('has no sign that is taken for another', () => {
    fc.assert(fc.property(codes, (code) => expect(code).toMatch(/^[^01258BILOSVZ]{6}$/)));
  });

  it('shows one wrong sign', () => {
    fc.assert(
      fc.property(codes, fc.nat(5), fc.constantFrom(...'ACDEFGHJKMNPQRTUWXY3469'), (code, at, sign) => {
        fc.pre(code.charAt(at) !== sign);
        expect(codeProblem(code.slice(0, at) + sign + code.slice(at + 1))).toMatch(MISTYPED);
      }),
    );
  });

  it('shows two neighbours swapped', () => {
    fc.assert(
      fc.property(codes, fc.nat(4), (code, at) => {
        fc.pre(code.charAt(at) !== code.charAt(at + 1));
        expect(codeProblem(code.slice(0, at) + code.charAt(at + 1) + code.charAt(at) + code.slice(at + 2))).toMatch(MISTYPED);
      }),
    );
  });
});

describe('codeProblem', () => {
  it.each([
    ['', 'Type the code on the label'],
    ['KMOA4Q', 'There is no “O” in our codes'],
    ['KM3', 'A code has 6 signs, this has 3'],
    ['AAAAAC', 'AAA-AAC has a mistyped sign'],
  ])('says what is wrong with “%s”', (code, message) => {
    expect(codeProblem(code)).toContain(message);
  });
});
