import { describe, expect, it } from '@jest/globals';
import { type CreditLine, type CreditMatchingQuestion, type CreditUnit } from './credit-matching.types.ts';
import { MatchingInputError } from '../matching-input-error.ts';
import { matchCreditLines } from './match-credit-lines.ts';

const unit = (id: string, more: Partial<CreditUnit> = {}): CreditUnit => ({
  id,
  references: ['RN-0042'],
  parts: ['TX-5482'],
  charged: '30.00',
  handedOverOn: '2026-11-02',
  ...more,
});
const line = (id: string, more: Partial<CreditLine> = {}): CreditLine => ({
  id,
  documentId: 'CN-1',
  reference: 'RN-0042',
  part: 'TX 5482',
  quantity: 1,
  net: '30.00',
  date: '2026-11-10',
  ...more,
});
const kinds = (question: CreditMatchingQuestion): string[] => matchCreditLines(question).differences.map(({ kind }) => kind);

describe('a credit note that agrees', () => {
  it('is matched, sure, without a difference', () => {
    const answer = matchCreditLines({ lines: [line('L1')], units: [unit('U1')] });
    expect(answer.matches).toEqual([
      { lineId: 'L1', unitId: 'U1', share: '30.00', fee: '0.00', expected: '30.00', certainty: 'sure', reasons: [], alternatives: [] },
    ]);
    expect(answer.differences).toEqual([]);
  });

  it('in one line of two takes both units, with the cents shared out', () => {
    const answer = matchCreditLines({ lines: [line('L1', { quantity: 2, net: '60.01' })], units: [unit('U1'), unit('U2')] });
    expect(answer.matches.map(({ unitId, share, certainty }) => [unitId, share, certainty])).toEqual([
      ['U1', '30.01', 'sure'],
      ['U2', '30.00', 'sure'],
    ]);
    expect(answer.differences).toEqual([]);
  });

  it('after agreed restocking is no difference', () => {
    expect(kinds({ lines: [line('L1', { net: '25.50' })], units: [unit('U1', { restockingPercent: '15' })] })).toEqual([]);
  });

  it('finds its reference and part in the words', () => {
    const words = { reference: null, part: null, text: 'Refund for RN-0042, TX-5482' };
    expect(matchCreditLines({ lines: [line('L1', words)], units: [unit('U1')] }).matches[0]?.certainty).toBe('sure');
  });

  it('with a swapped digit in the reference is still found by it, by part and by amount', () => {
    const answer = matchCreditLines({
      lines: [line('L1', { reference: 'RN-0024' })],
      units: [unit('U1'), unit('U2', { references: ['RN-0777'] })],
    });
    expect(answer.matches[0]).toMatchObject({ unitId: 'U1', certainty: 'sure' });
  });
});

describe('one short, one missing, one twice', () => {
  const units = [unit('U1', { references: ['RN-0041'] }), unit('U2', { references: ['RN-0042'] }), unit('U3', { references: ['RN-0043'] })];
  const lines = [
    line('short', { reference: 'RN-0041', net: '24.00' }),
    line('right', { reference: 'RN-0043' }),
    line('again', { reference: 'RN-0043', documentId: 'CN-2', date: '2026-11-12' }),
  ];

  it('names exactly that', () => {
    const { differences } = matchCreditLines({ lines, units });
    expect(differences.map(({ kind, lineId, unitId, amount }) => ({ kind, lineId, unitId, amount }))).toEqual([
      { kind: 'short', lineId: 'short', unitId: 'U1', amount: '6.00' },
      { kind: 'twice', lineId: 'again', unitId: 'U3', amount: '30.00' },
      { kind: 'not-credited', lineId: undefined, unitId: 'U2', amount: '30.00' },
    ]);
  });

  it('does not lay the copy on the neighbour whose reference differs by one digit', () => {
    const answer = matchCreditLines({ lines, units });
    expect(answer.secondLines).toEqual([{ lineId: 'again', unitId: 'U3', share: '30.00', proposal: 'twice' }]);
    expect(answer.unmatchedUnits).toEqual(['U2']);
    expect(answer.matches.every(({ certainty }) => certainty === 'sure')).toBe(true);
  });
});

describe('differences by name', () => {
  it('over', () => {
    expect(matchCreditLines({ lines: [line('L1', { net: '33.00' })], units: [unit('U1')] }).differences[0]).toMatchObject({
      kind: 'over',
      amount: '3.00',
      words: '3.00 too much: 33.00 came, 30.00 was due.',
    });
  });

  it.each<[string, Partial<CreditLine>, Partial<CreditUnit>, string]>([
    ['a larger round percentage where the terms have restocking', { net: '24.00' }, { restockingPercent: '10' }, 'restocking-beyond-terms'],
    ['a fee in words where the terms have none', { net: '25.50', text: 'less restocking 15 %' }, {}, 'restocking-beyond-terms'],
    ['a round percentage where the terms have none', { net: '27.00' }, {}, 'short'],
    ['an odd amount', { net: '24.37' }, { restockingPercent: '10' }, 'short'],
  ])('%s', (_, lineMore, unitMore, kind) => {
    expect(kinds({ lines: [line('L1', lineMore)], units: [unit('U1', unitMore)] })).toEqual([kind]);
  });

  it('a separate restocking line is shared among the units of its document', () => {
    const answer = matchCreditLines({
      lines: [line('L1', { quantity: 2, net: '60.00' }), line('fee', { part: null, text: 'Restocking charge', net: '-9.00' })],
      units: [unit('U1'), unit('U2'), unit('U3', { references: ['RN-9000'] })],
    });
    expect(answer.matches.map(({ unitId, fee }) => [unitId, fee])).toEqual([
      ['U1', '4.50'],
      ['U2', '4.50'],
    ]);
    expect(answer.recognised).toEqual([{ lineId: 'fee', kind: 'restocking', net: '-9.00', unitIds: ['U1', 'U2'] }]);
    expect(answer.differences.map(({ kind, amount }) => [kind, amount])).toEqual([
      ['restocking-beyond-terms', '4.50'],
      ['restocking-beyond-terms', '4.50'],
      ['not-credited', '30.00'],
    ]);
  });

  it('a separate restocking line within the terms is none', () => {
    const terms = { restockingPercent: '15' };
    const lines = [line('L1'), line('fee', { part: null, text: 'Restocking charge', net: '-4.50' })];
    expect(kinds({ lines, units: [unit('U1', terms)] })).toEqual([]);
  });

  it('unknown: a line for something never sent back', () => {
    const answer = matchCreditLines({ lines: [line('L1', { reference: 'RN-7777', part: 'QQ-1' })], units: [unit('U1')] });
    expect(answer.unknown).toEqual([{ lineId: 'L1', quantity: 1, net: '30.00' }]);
    expect(answer.differences.map(({ kind }) => kind)).toEqual(['unknown', 'not-credited']);
  });

  it('not credited says whether it is overdue; a unit still here is not missed', () => {
    const units = [
      unit('late', { creditDueOn: '2026-11-20' }),
      unit('soon', { creditDueOn: '2026-12-20' }),
      unit('here', { handedOverOn: null }),
    ];
    const { differences, unmatchedUnits } = matchCreditLines({ lines: [], units, asOf: '2026-11-24' });
    expect(differences.map(({ unitId, isOverdue }) => [unitId, isOverdue])).toEqual([
      ['late', true],
      ['soon', false],
    ]);
    expect(unmatchedUnits).toEqual(['late', 'soon', 'here']);
  });

  it('tolerates two pence by default and what is asked for otherwise', () => {
    const off = (net: string, amountTolerance?: string) => kinds({ lines: [line('L1', { net })], units: [unit('U1')], amountTolerance });
    expect(off('29.98')).toEqual([]);
    expect(off('29.97')).toEqual(['short']);
    expect(off('29.50', '0.50')).toEqual([]);
  });
});

describe('credits in parts', () => {
  it('the rest after an earlier part is what is due', () => {
    expect(kinds({ lines: [line('L1', { net: '10.00' })], units: [unit('U1', { credited: '20.00' })] })).toEqual([]);
  });

  it('two parts on one document: the second is proposed as part', () => {
    const answer = matchCreditLines({ lines: [line('L1', { net: '20.00' }), line('L2', { net: '10.00' })], units: [unit('U1')] });
    expect(answer.matches.map(({ lineId }) => lineId)).toEqual(['L1']);
    expect(answer.secondLines).toEqual([{ lineId: 'L2', unitId: 'U1', share: '10.00', proposal: 'part' }]);
  });

  it('a line for a settled unit is twice, and so is a third one', () => {
    const answer = matchCreditLines({ lines: [line('L1'), line('L2'), line('L3')], units: [unit('U1', { credited: '30.00' })] });
    expect(answer.matches).toEqual([]);
    expect(answer.secondLines.map(({ lineId, proposal }) => [lineId, proposal])).toEqual([
      ['L1', 'twice'],
      ['L2', 'twice'],
      ['L3', 'twice'],
    ]);
  });

  it('a line of more pieces than there are units is twice for the rest', () => {
    const answer = matchCreditLines({ lines: [line('L1', { quantity: 3, net: '90.00' })], units: [unit('U1'), unit('U2')] });
    expect(answer.matches).toHaveLength(2);
    expect(answer.secondLines).toHaveLength(1);
  });
});

describe('for a person', () => {
  it('two units that would do as well', () => {
    const [match] = matchCreditLines({ lines: [line('L1')], units: [unit('U1'), unit('U2')] }).matches;
    expect(match).toMatchObject({ certainty: 'unsure', reasons: ['equal-score'] });
    expect([match?.unitId, ...(match?.alternatives ?? [])].sort()).toEqual(['U1', 'U2']);
  });

  it('copies of one line are no choice: one is the credit, the other is twice', () => {
    const answer = matchCreditLines({ lines: [line('L1'), line('L2')], units: [unit('U1')] });
    expect(answer.matches).toMatchObject([{ certainty: 'sure' }]);
    expect(answer.secondLines).toMatchObject([{ proposal: 'twice' }]);
  });

  it('an amount alone', () => {
    const bare = { reference: null, part: null, text: 'Goods returned' };
    expect(matchCreditLines({ lines: [line('L1', bare)], units: [unit('U1')] }).matches).toMatchObject([
      { unitId: 'U1', certainty: 'unsure', reasons: ['little-evidence'] },
    ]);
  });

  it('another part under the right reference', () => {
    const answer = matchCreditLines({ lines: [line('L1', { part: 'ZZ-1' })], units: [unit('U1')] });
    expect(answer.matches).toMatchObject([{ certainty: 'unsure', reasons: ['contradiction'] }]);
  });
});

describe('the best overall', () => {
  it('gives each line its own rather than the first its nearest', () => {
    const units = [unit('U1', { references: [], charged: '30.00' }), unit('U2', { references: [], charged: '34.00' })];
    const lines = [line('L1', { reference: null, net: '32.00' }), line('L2', { reference: null, net: '30.00' })];
    const answer = matchCreditLines({ lines, units });
    expect(answer.matches.map(({ lineId, unitId }) => [lineId, unitId])).toEqual([
      ['L1', 'U2'],
      ['L2', 'U1'],
    ]);
  });
});

describe('lines that are no credits for units', () => {
  it.each([
    ['Carriage on return', '-6.00', 'carriage'],
    ['Delivery refund', '4.00', 'carriage'],
    ['Payment received, thank you', '120.00', 'payment'],
    ['Core credit', '20.00', 'core-charge'],
    ['Balance brought forward', '99.00', 'balance'],
    ['Invoice 77', '-12.00', 'invoice'],
    ['', '-12.00', 'invoice'],
  ])('%p of %p is recognised: %s', (text, net, kind) => {
    const answer = matchCreditLines({ lines: [line('L1', { reference: null, part: null, text, net })], units: [unit('U1')] });
    expect(answer.recognised).toMatchObject([{ lineId: 'L1', kind }]);
    expect(answer.unknown).toEqual([]);
    expect(answer.matches).toEqual([]);
  });

  it('a fee for no unit on its document is unknown', () => {
    const stray = line('fee', { documentId: 'CN-9', part: null, text: 'Restocking charge', net: '-9.00' });
    expect(kinds({ lines: [line('L1'), stray], units: [unit('U1')] })).toEqual(['unknown']);
  });
});

describe('refusals', () => {
  it.each<[string, Partial<CreditLine>, Partial<CreditUnit>, string]>([
    ['a comma', { net: '12,50' }, {}, "The net of line 1 is '12,50', which is no amount"],
    ['half a piece', { quantity: 1.5 }, {}, 'The quantity of line 1 is 1.5: units are whole'],
    ['a million pieces', { quantity: 1_000_000 }, {}, 'give 1 to 10000'],
    ['the thirtieth of February', { date: '2026-02-30' }, {}, "'2026-02-30', which doesn't exist"],
    ['a negative charge', {}, { charged: '-1.00' }, 'What unit U1 was charged at is -1.00'],
    ['more than everything', {}, { restockingPercent: '101' }, 'give 100 or less'],
  ])('%s', (_, lineMore, unitMore, words) => {
    const question = { lines: [line('L1', lineMore)], units: [unit('U1', unitMore)] };
    expect(() => matchCreditLines(question)).toThrow(MatchingInputError);
    expect(() => matchCreditLines(question)).toThrow(words);
  });

  it('more pieces than can be matched at once', () => {
    const lines = Array.from({ length: 6 }, (_, index) => line(`L${index}`, { quantity: 10_000, net: '100.00' }));
    expect(() => matchCreditLines({ lines, units: [] })).toThrow('60000 pieces in all');
  });

  it('too many look-alikes', () => {
    const lines = Array.from({ length: 2300 }, (_, index) => line(`L${index}`));
    const units = Array.from({ length: 2300 }, (_, index) => unit(`U${index}`));
    expect(() => matchCreditLines({ lines, units })).toThrow('match one supplier and a shorter time at a time');
  });

  it('ids that occur twice', () => {
    expect(() => matchCreditLines({ lines: [line('L1'), line('L1')], units: [] })).toThrow('The line L1 is there twice');
  });
});
