import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { MatchingInputError } from '../matching-input-error.ts';
import { matchStatement } from './match-statement.ts';
import { type StatementDocument, type StatementLine } from './statement.types.ts';

const documents: StatementDocument[] = [
  { id: 'I1', kind: 'invoice', numbers: ['INV-700'], total: '144.00', date: '2026-11-01' },
  { id: 'C1', kind: 'credit-note', numbers: ['CN-31'], total: '36.00', date: '2026-11-09' },
  { id: 'E1', kind: 'expected-credit', numbers: ['RN-0042'], total: '30.60', date: '2026-11-11' },
  { id: 'P1', kind: 'payment', numbers: ['BACS 5512'], total: '108.00', date: '2026-11-20' },
];
const lines: StatementLine[] = [
  { id: 'L1', number: 'INV 700', text: 'Invoice', amount: '144.00', date: '2026-11-01' },
  { id: 'L2', number: 'CN 31', text: 'Credit note', amount: '-36.00', date: '2026-11-09' },
  { id: 'L3', text: 'Credit RN-0042', amount: '-30.60', date: '2026-11-12' },
  { id: 'L4', number: 'BACS5512', text: 'Payment - thank you', amount: '-108.00', date: '2026-11-21' },
];

describe('a statement that agrees', () => {
  it('lays every line on its document, sure', () => {
    const answer = matchStatement({ lines, documents });
    expect(answer.matches.map(({ lineId, documentId, certainty }) => [lineId, documentId, certainty])).toEqual([
      ['L1', 'I1', 'sure'],
      ['L2', 'C1', 'sure'],
      ['L3', 'E1', 'sure'],
      ['L4', 'P1', 'sure'],
    ]);
    expect(answer.differences).toEqual([]);
    expect(answer.unmatchedDocuments).toEqual([]);
  });
});

describe('one short credit, one missing, one twice', () => {
  it('names exactly that', () => {
    const credits: StatementDocument[] = ['41', '42', '43'].map((number) => ({
      id: `R${number}`,
      kind: 'expected-credit',
      numbers: [`RN-00${number}`],
      total: '36.00',
      date: '2026-11-09',
    }));
    const stated: StatementLine[] = [
      { id: 'short', number: 'RN-0041', text: 'Credit', amount: '-30.00', date: '2026-11-10' },
      { id: 'right', number: 'RN-0043', text: 'Credit', amount: '-36.00', date: '2026-11-10' },
      { id: 'again', number: 'RN-0043', text: 'Credit', amount: '-36.00', date: '2026-11-12' },
    ];
    const { differences } = matchStatement({ lines: stated, documents: credits });
    expect(differences.map(({ kind, lineId, documentId, amount }) => ({ kind, lineId, documentId, amount }))).toEqual([
      { kind: 'short', lineId: 'short', documentId: 'R41', amount: '6.00' },
      { kind: 'twice', lineId: 'again', documentId: 'R43', amount: '36.00' },
      { kind: 'not-credited', lineId: undefined, documentId: 'R42', amount: '36.00' },
    ]);
  });
});

describe('lines that are no credits', () => {
  it.each([
    ['Carriage', '6.00', 'carriage'],
    ['Balance brought forward', '250.00', 'balance'],
    ['Invoice 9911', '80.00', 'invoice'],
    ['Payment received', '-80.00', 'payment'],
    ['', '80.00', 'invoice'],
  ])('%p of %p without a document of ours is recognised, not unknown', (text, amount, kind) => {
    const answer = matchStatement({ lines: [{ id: 'L1', text, amount }], documents });
    expect(answer.recognised).toEqual([{ lineId: 'L1', kind }]);
    expect(answer.unknown).toEqual([]);
  });

  it('a credit without a document of ours is unknown', () => {
    const answer = matchStatement({ lines: [{ id: 'L1', number: 'CN-99', text: 'Credit', amount: '-12.34' }], documents: [] });
    expect(answer.unknown).toEqual(['L1']);
    expect(answer.differences).toMatchObject([{ kind: 'unknown', amount: '12.34' }]);
  });
});

describe('what is laid and what is not', () => {
  it('a credit is not laid on an invoice of the same amount', () => {
    const answer = matchStatement({ lines: [{ id: 'L1', text: 'Credit', amount: '-144.00', date: '2026-11-01' }], documents });
    expect(answer.matches).toEqual([]);
    expect(answer.unknown).toEqual(['L1']);
  });

  it('an amount with its kind and no number is laid, for a person to look at', () => {
    const answer = matchStatement({ lines: [{ id: 'L1', text: 'Credit', amount: '-36.00', date: '2026-11-10' }], documents });
    expect(answer.matches).toMatchObject([{ documentId: 'C1', certainty: 'unsure', reasons: ['little-evidence'] }]);
  });

  it('an amount alone is not laid', () => {
    const answer = matchStatement({ lines: [{ id: 'L1', amount: '-36.00' }], documents });
    expect(answer.matches).toEqual([]);
  });

  it('a number with one slip is laid, for a person to look at', () => {
    const slip = { id: 'L1', number: 'INV-7001', text: 'Invoice', amount: '144.00' };
    expect(matchStatement({ lines: [slip], documents }).matches).toMatchObject([{ documentId: 'I1', certainty: 'unsure' }]);
  });

  it('two halves of one credit: the second is part', () => {
    const half = (id: string): StatementLine => ({ id, number: 'RN-0042', text: 'Credit', amount: '-15.30' });
    const answer = matchStatement({ lines: [half('L1'), half('L2')], documents });
    expect(answer.secondLines).toEqual([{ lineId: 'L2', documentId: 'E1', proposal: 'part' }]);
  });

  it('an invoice on the statement twice is twice', () => {
    const twice = (id: string): StatementLine => ({ id, number: 'INV-700', text: 'Invoice', amount: '144.00' });
    const answer = matchStatement({ lines: [twice('L1'), twice('L2'), twice('L3')], documents });
    expect(answer.secondLines.map(({ lineId, proposal }) => [lineId, proposal])).toEqual([
      ['L2', 'twice'],
      ['L3', 'twice'],
    ]);
    expect(answer.matches).toMatchObject([{ certainty: 'sure' }]);
  });
});

describe('refusals', () => {
  it.each<[string, Partial<StatementLine>, string]>([
    ['a comma', { amount: '-36,00' }, "The amount of line 1 is '-36,00'"],
    ['a date that does not exist', { date: '31.11.2026' }, "'31.11.2026', which doesn't exist"],
  ])('%s', (_, more, words) => {
    const bad = () => matchStatement({ lines: [{ id: 'L1', amount: '1.00', ...more }], documents });
    expect(bad).toThrow(MatchingInputError);
    expect(bad).toThrow(words);
  });
});

describe('whatever suppliers send', () => {
  const number = fc.constantFrom('INV-700', 'INV-701', 'CN-31', 'CN-13', 'RN-0042', null);
  const amount = fc.constantFrom('36.00', '-36.00', '144.00', '-30.60', '-108.00', '0.00', '6.00');
  const date = fc.constantFrom('2026-11-01', '2026-11-09', null);
  const text = fc.constantFrom('Credit', 'Invoice', 'Payment', 'Carriage', '', 'Credit CN-31', '<script>');
  const anyLines = fc
    .array(fc.record({ number, amount, date, text }), { maxLength: 12 })
    .map((all) => all.map((each, index) => ({ ...each, id: `L${index}` })));
  const anyDocuments = fc
    .array(
      fc.record({
        kind: fc.constantFrom<StatementDocument['kind']>('invoice', 'credit-note', 'expected-credit', 'payment'),
        numbers: fc.array(number, { maxLength: 2 }).map((all) => all.filter((each) => each !== null)),
        total: fc.constantFrom('36.00', '144.00', '30.60', '108.00', '0.00'),
        date,
      }),
      { maxLength: 12 },
    )
    .map((all) => all.map((each, index) => ({ ...each, id: `D${index}` })));

  it('every line is in exactly one place, every document is matched once or reported', () => {
    fc.assert(
      fc.property(anyLines, anyDocuments, (stated, ours) => {
        const answer = matchStatement({ lines: stated, documents: ours });
        const placed = [
          ...answer.matches.map(({ lineId }) => lineId),
          ...answer.secondLines.map(({ lineId }) => lineId),
          ...answer.recognised.map(({ lineId }) => lineId),
          ...answer.unknown,
        ];
        expect(placed.sort()).toEqual(stated.map(({ id }) => id).sort());
        const found = [...answer.matches.map(({ documentId }) => documentId), ...answer.unmatchedDocuments];
        expect(found.sort()).toEqual(ours.map(({ id }) => id).sort());
      }),
      { numRuns: 300 },
    );
  });
});
