import { describe, expect, it } from '@jest/globals';
import { Decimal } from '#libs/money';
import {
  checkClaim,
  checkCoreMove,
  checkMove,
  checkMoneyEntry,
  CORE_MOVES,
  CORE_STATES,
  type MoneyEntry,
  type MoveRequest,
  newUnit,
  NO_CLAIM,
  openAmount,
  recordUnitEvent,
  stockAccount,
  type Unit,
  UNIT_MOVES,
  UNIT_PLACES,
  unitDebts,
  type UnitEvent,
  type UnitPlace,
} from './index.ts';

const RULES = { writeOffLimit: '50' };
const who = { by: 'ines', at: '2026-06-09T09:00:00Z' };
let made = 0;

function money(kind: MoneyEntry['kind'], amountNet: string, over: Partial<MoneyEntry> = {}): UnitEvent & { kind: 'money' } {
  made += 1;
  return { kind: 'money', entry: { id: `m${made}`, kind, amountNet, reference: 'doc', ...who, ...over } };
}

function move(to: UnitPlace, over: Partial<MoveRequest> = {}): UnitEvent {
  return { kind: 'move', move: { to, ...who, ...over } };
}

function live(unit: Unit, ...events: readonly UnitEvent[]): Unit {
  return events.reduce((now, event) => {
    const next = recordUnitEvent(now, event, RULES);
    if (!next.ok) throw new Error(next.why);
    return next.unit;
  }, unit);
}

const onShelf = (): Unit => live(newUnit('u1', 'ordered', { lineId: 'l1', jobId: 'j14' }), money('charged', '31.20'), move('set-aside'));
const backAgain = (): Unit =>
  live(onShelf(), move('to-return', { returnReason: 'not-needed' }), move('handed-over', { signature: 'driver K.' }));

describe('places', () => {
  it('every place but expected can be reached, and only the true ends can not be left', () => {
    const reached = new Set<UnitPlace>(['expected']);
    UNIT_PLACES.forEach(() => UNIT_MOVES.filter((one) => reached.has(one.from)).forEach((one) => reached.add(one.to)));
    expect([...reached].sort()).toEqual([...UNIT_PLACES].sort());
    expect(UNIT_PLACES.filter((place) => !UNIT_MOVES.some((one) => one.from === place))).toEqual([
      'called-off',
      'never-came',
      'sold',
      'gone-for-good',
    ]);
  });

  it.each([
    ['to-return', {}, 'Say why it goes back'],
    ['to-return', { returnReason: 'bored' }, 'Say why it goes back'],
    ['fitted', {}, 'in which job'],
    ['sold', { document: ' ' }, 'which document'],
    ['written-off', {}, 'Say why it is written off'],
    ['handed-over', { signature: 'x' }, "can't go from 'Set aside' to 'Handed over'"],
    ['expected', {}, "can't go from 'Set aside' to 'Expected'"],
    ['stocked', { by: '' }, 'who and when'],
  ] as const)('set aside to %s %j: %s', (to, over, why) => {
    const answer = checkMove(onShelf(), { to, ...who, ...over }, RULES);
    expect(answer.ok ? '' : answer.why).toContain(why);
  });

  it('handing over needs a signature or a tracking number', () => {
    const packed = live(onShelf(), move('to-return', { returnReason: 'not-needed' }));
    expect(checkMove(packed, { to: 'handed-over', ...who }, RULES).ok).toBe(false);
    expect(checkMove(packed, { to: 'handed-over', ...who, tracking: 'T 1' }, RULES).ok).toBe(true);
  });

  it('the cost follows the unit into the job it is fitted in', () => {
    expect(live(onShelf(), move('fitted', { jobId: 'j21' })).jobId).toBe('j21');
    expect(live(onShelf(), move('stocked')).jobId).toBeNull();
  });

  it('only the owner writes off what cost more than the limit', () => {
    const dear = live(onShelf(), money('charged', '30'));
    const loss = live(dear, money('loss-accepted', '61.20'));
    expect(checkMove(loss, { to: 'written-off', ...who, why: 'lost' }, RULES)).toMatchObject({
      why: 'Above 50 only the owner writes a unit off.',
    });
    expect(checkMove(loss, { to: 'written-off', ...who, why: 'lost', isOwner: true }, RULES).ok).toBe(true);
    expect(live(loss, move('written-off', { why: 'lost', isOwner: true }), move('set-aside')).place).toBe('set-aside');
  });
});

describe('money', () => {
  it('an end place needs nothing open', () => {
    const gone = recordUnitEvent(backAgain(), move('gone-for-good'), RULES);
    expect(gone.ok ? '' : gone.why).toBe(
      "31.20 is still open: enter the credit, what the carrier paid, or accept the loss, before 'Gone for good'.",
    );
    expect(live(backAgain(), money('credited', '28.08'), money('loss-accepted', '3.12'), move('gone-for-good')).place).toBe(
      'gone-for-good',
    );
    const lost = live(backAgain(), money('carrier-paid', '31.20'), move('written-off', { why: 'lost on the way' }));
    expect([lost.place, lost.claim.state]).toEqual(['written-off', 'closed']);
  });

  it('an entry is taken back by its counter-entry, once, and never by another amount', () => {
    const entry = money('credited', '31.20');
    const unit = live(backAgain(), entry);
    const counter = money('credited', '-31.20', { counters: entry.entry.id });
    const undone = live(unit, counter);
    expect(openAmount(undone.money).toFixed(2)).toBe('31.20');
    const why = (event: UnitEvent & { kind: 'money' }, account = unit): string => {
      const answer = checkMoneyEntry(account.money, event.entry);
      return answer.ok ? '' : answer.why;
    };
    expect(why(money('credited', '-31.20', { counters: entry.entry.id }), undone)).toContain('taken back already');
    expect(why(money('credited', '-31.19', { counters: entry.entry.id }))).toContain('its amount with a minus');
    expect(why(money('charged', '-31.20', { counters: entry.entry.id }))).toContain('the kind of the entry');
    expect(why(money('credited', '-1'))).toContain('more than nothing');
    expect(why(money('credited', '1e3'))).toContain('no figure');
    expect(why(entry)).toContain('made already');
    expect(why(money('charged', '-5', { counters: 'nothing' }))).toContain('no such entry');
  });

  it('ten times ten cents are one euro', () => {
    const entries = Array.from({ length: 10 }, () => money('charged', '0.10').entry);
    expect(openAmount(entries).equals(1)).toBe(true);
  });
});

describe('claims', () => {
  it('a unit handed over with money open is owed for, and closed by its credit', () => {
    expect(backAgain().claim).toEqual({ state: 'owed', answer: null, closing: null });
    expect(live(backAgain(), money('credited', '31.20')).claim).toEqual({ state: 'closed', answer: 'full', closing: 'agreed' });
  });

  it('a short credit stays open until the rest comes or the loss is accepted', () => {
    const short = live(backAgain(), money('credited', '28.08'), {
      kind: 'claim',
      claim: { state: 'answered', answer: 'short', closing: null },
    });
    const close = recordUnitEvent(short, { kind: 'claim', claim: { state: 'closed', answer: 'short', closing: 'agreed' } }, RULES);
    expect(close.ok ? '' : close.why).toContain('3.12 is still open');
    expect(unitDebts([short])).toHaveLength(1);
    expect(live(short, money('loss-accepted', '3.12')).claim).toEqual({ state: 'closed', answer: 'short', closing: 'agreed' });
  });

  it('money after the end opens a claim: credited twice, we owe', () => {
    const gone = live(backAgain(), money('credited', '31.20'), move('gone-for-good'));
    expect(unitDebts([gone])).toEqual([]);
    const twice = live(gone, money('credited', '31.20'));
    expect([twice.place, twice.claim.state, openAmount(twice.money).toFixed(2)]).toEqual(['gone-for-good', 'owed', '-31.20']);
    expect(unitDebts([twice])).toHaveLength(1);
  });

  it('a unit that comes back refused ends its claim; what it cost stays its cost', () => {
    const refused = live(backAgain(), move('set-aside'));
    expect(refused.claim).toEqual({ state: 'closed', answer: 'refused', closing: 'agreed' });
    const fitted = live(refused, move('fitted', { jobId: 'j30' }));
    expect([openAmount(fitted.money).toFixed(2), unitDebts([fitted]).length]).toEqual(['31.20', 0]);
  });

  it('goes only along its moves and says its answer', () => {
    const at = { open: new Decimal(5), place: 'handed-over' } as const;
    expect(checkClaim(NO_CLAIM, { state: 'made', answer: null, closing: null }, at).ok).toBe(false);
    const owed = { state: 'owed', answer: null, closing: null } as const;
    expect(checkClaim(owed, { state: 'answered', answer: null, closing: null }, at)).toMatchObject({ ok: false });
    const answered = { state: 'answered', answer: 'refused', closing: null } as const;
    expect(checkClaim(answered, { state: 'made', answer: null, closing: null }, at).ok).toBe(true);
    expect(checkClaim(answered, { state: 'closed', answer: 'refused', closing: null }, at)).toMatchObject({ ok: false });
  });
});

describe('core charges', () => {
  it.each([
    ['charged', { to: 'part-held' }, true],
    ['charged', { to: 'credited' }, false],
    ['charged', { to: 'credited', isUnitReturned: true }, true],
    ['charged', { to: 'forfeited' }, false],
    ['charged', { to: 'forfeited', why: 'housing broken' }, true],
    ['part-held', { to: 'handed-over' }, false],
    ['part-held', { to: 'handed-over', tracking: 'T' }, true],
    ['handed-over', { to: 'refused' }, true],
    ['credited', { to: 'refused' }, false],
    ['part-held', { to: 'credited', isUnitReturned: true }, false],
  ] as const)('%s %j: %s', (from, over, ok) => {
    expect(checkCoreMove(from, { ...who, ...over }).ok).toBe(ok);
  });

  it('ends credited, refused or forfeited', () => {
    expect(CORE_STATES.filter((state) => !CORE_MOVES.some((one) => one.from === state))).toEqual(['credited', 'refused', 'forfeited']);
  });
});

describe('counted stock', () => {
  it('receipts and found are used, sold, scrapped or on hand', () => {
    const kinds = ['received', 'found', 'used', 'sold', 'scrapped'] as const;
    const account = stockAccount(kinds.map((kind, i) => ({ kind, amount: [20_000, 500, 1_150, 2_000, 300][i] ?? 0 })));
    expect(account).toEqual({
      totals: { received: 20_000, found: 500, used: 1_150, sold: 2_000, scrapped: 300 },
      onHand: 17_050,
      problem: null,
    });
  });
  it('says when the count can not be right', () => {
    expect(stockAccount([{ kind: 'used', amount: 5 }]).problem).toBe('5 more left than came in: count again and enter what was found.');
    expect(
      stockAccount([
        { kind: 'used', amount: -5 },
        { kind: 'found', amount: 0.5 },
      ]),
    ).toMatchObject({ onHand: 0, problem: '-5 is no whole amount above nothing.' });
  });
});
