import { describe, expect, it } from '@jest/globals';
import { sumAmounts } from '#libs/money';
import fc from 'fast-check';
import { type CreditLine, type CreditMatchingQuestion, type CreditUnit } from './credit-matching.types.ts';
import { expectedCredit } from './expected-credit.ts';
import { matchCreditLines } from './match-credit-lines.ts';

const amount = fc.oneof(
  fc.constantFrom('30.00', '25.50', '24.00', '0.00'),
  fc.nat(9999).map((pence) => (pence / 100).toFixed(2)),
);
const date = fc.constantFrom('2026-11-02', '2026-11-10', '2026-12-01', null);
const reference = fc.constantFrom('RN-0041', 'RN-0042', 'RN-0043', 'RN-0024');
const part = fc.constantFrom('TX-5482', 'TX-5488', 'WP-1100');
const text = fc.constantFrom(null, 'Goods returned', 'Carriage', 'Restocking charge', 'Refund RN-0042', 'Core credit', '🔧 <b>', 'Payment');

const anyLines: fc.Arbitrary<CreditLine[]> = fc
  .array(
    fc.record({
      documentId: fc.constantFrom('CN-1', 'CN-2'),
      reference: fc.option(reference),
      part: fc.option(part),
      text,
      quantity: fc.integer({ min: 1, max: 4 }),
      net: fc.tuple(amount, fc.constantFrom('', '', '', '-')).map(([figure, sign]) => sign + figure),
      date,
    }),
    { maxLength: 12 },
  )
  .map((lines) => lines.map((line, index) => ({ ...line, id: `L${index}` })));

const anyUnits: fc.Arbitrary<CreditUnit[]> = fc
  .array(
    fc.record({
      references: fc.array(reference, { maxLength: 2 }),
      parts: fc.array(part, { maxLength: 2 }),
      charged: amount,
      credited: fc.constantFrom('0', '0', '10.00', '30.00'),
      restockingPercent: fc.constantFrom('0', '15'),
      handedOverOn: date,
    }),
    { maxLength: 12 },
  )
  .map((units) => units.map((unit, index) => ({ ...unit, id: `U${index}` })));

const anyQuestion: fc.Arbitrary<CreditMatchingQuestion> = fc.record({ lines: anyLines, units: anyUnits });

describe('whatever suppliers send', () => {
  it('every piece of every line is in exactly one place', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const { matches, secondLines, recognised, unknown } = matchCreditLines(question);
        for (const { id, quantity } of question.lines) {
          const isRecognised = recognised.some(({ lineId }) => lineId === id);
          const laid = [...matches, ...secondLines].filter(({ lineId }) => lineId === id).length;
          const left = unknown.filter(({ lineId }) => lineId === id).reduce((sum, each) => sum + each.quantity, 0);
          expect(isRecognised ? laid + left : laid + left - quantity).toBe(0);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('no penny is lost or made', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const { matches, secondLines, recognised, unknown } = matchCreditLines(question);
        const came = sumAmounts(question.lines.map(({ net }) => net));
        const went = sumAmounts([
          ...matches.map(({ share }) => share),
          ...secondLines.map(({ share }) => share),
          ...recognised.map(({ net }) => net),
          ...unknown.map(({ net }) => net),
        ]);
        expect(went.toFixed(4)).toBe(came.toFixed(4));
      }),
      { numRuns: 300 },
    );
  });

  it('every unit with money due is matched once or reported, and no unit twice', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const { matches, unmatchedUnits } = matchCreditLines(question);
        const matched = matches.map(({ unitId }) => unitId);
        expect(new Set(matched).size).toBe(matched.length);
        const open = question.units.filter((unit) => expectedCredit(unit).due.greaterThan(0)).map(({ id }) => id);
        expect([...matched, ...unmatchedUnits].sort()).toEqual(open.sort());
      }),
      { numRuns: 300 },
    );
  });

  it('every unit that left with money due and no line is named', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const { unmatchedUnits, differences } = matchCreditLines(question);
        const missing = differences.filter(({ kind }) => kind === 'not-credited').map(({ unitId }) => unitId);
        const expected = question.units.filter(
          (unit) => unmatchedUnits.includes(unit.id) && unit.handedOverOn !== null && expectedCredit(unit).due.greaterThan('0.02'),
        );
        expect(missing.sort()).toEqual(expected.map(({ id }) => id).sort());
      }),
    );
  });

  it('does not depend on the order of the units where the matches are sure', () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const sure = (answer: ReturnType<typeof matchCreditLines>): string[] =>
          answer.matches.filter(({ certainty }) => certainty === 'sure').map(({ lineId, unitId }) => `${lineId}:${unitId}`);
        const forwards = matchCreditLines(question);
        const backwards = matchCreditLines({ ...question, units: [...question.units].reverse() });
        const copies = new Set(question.lines.map((line) => JSON.stringify({ ...line, id: '' }))).size < question.lines.length;
        const isSplit = question.lines.some(({ quantity }) => quantity > 1);
        if (!copies && !isSplit) expect(sure(backwards).sort()).toEqual(sure(forwards).sort());
      }),
      { numRuns: 300 },
    );
  });
});
