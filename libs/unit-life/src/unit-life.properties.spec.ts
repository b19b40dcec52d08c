import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { Decimal } from '#libs/money';
import {
  ARRIVAL_REASONS,
  type ArrivalReason,
  CLAIM_STATES,
  type ClaimAnswer,
  type ClaimClosing,
  isEndPlace,
  lineAccount,
  MONEY_KINDS,
  newUnit,
  openAmount,
  recordUnitEvent,
  type Unit,
  UNIT_MOVES,
  UNIT_PLACES,
  unitsAccount,
  type UnitEvent,
} from './index.ts';

/** An order line of some pieces, and what happens to it: deliveries (short, over, wrong), moves, money, claims, undoing. */
type Command =
  | { readonly do: 'arrive'; readonly reason: ArrivalReason }
  | { readonly do: 'move'; readonly unit: number; readonly pick: number; readonly evidence: boolean }
  | { readonly do: 'money'; readonly unit: number; readonly kind: (typeof MONEY_KINDS)[number]; readonly cents: number }
  | { readonly do: 'settle'; readonly unit: number; readonly kind: 'credited' | 'carrier-paid' | 'loss-accepted' }
  | { readonly do: 'undo'; readonly unit: number; readonly entry: number }
  | {
      readonly do: 'claim';
      readonly unit: number;
      readonly state: (typeof CLAIM_STATES)[number];
      readonly answer: ClaimAnswer;
      readonly closing: ClaimClosing;
    };

const unit = fc.nat(5);
const command: fc.Arbitrary<Command> = fc.oneof(
  fc.record({ do: fc.constant('arrive' as const), reason: fc.constantFrom(...ARRIVAL_REASONS) }),
  {
    weight: 4,
    arbitrary: fc.record({
      do: fc.constant('move' as const),
      unit,
      pick: fc.nat(19),
      evidence: fc.integer({ min: 0, max: 4 }).map((n) => n > 0),
    }),
  },
  fc.record({ do: fc.constant('money' as const), unit, kind: fc.constantFrom(...MONEY_KINDS), cents: fc.integer({ min: -5, max: 5000 }) }),
  fc.record({ do: fc.constant('settle' as const), unit, kind: fc.constantFrom('credited', 'carrier-paid', 'loss-accepted') }),
  fc.record({ do: fc.constant('undo' as const), unit, entry: fc.nat(5) }),
  fc.record({
    do: fc.constant('claim' as const),
    unit,
    state: fc.constantFrom(...CLAIM_STATES),
    answer: fc.constantFrom('full', 'short', 'swapped', 'refused'),
    closing: fc.constantFrom('agreed', 'loss-accepted'),
  }),
);

interface World {
  readonly units: readonly Unit[];
  /** Charged − credited − carrier − loss in cents, kept beside the library as plain whole numbers. */
  readonly cents: Readonly<Record<string, number>>;
  readonly next: number;
}

function start(ordered: number): World {
  const units = Array.from({ length: ordered }, (_one, i) => newUnit(`u${i}`, 'ordered', { lineId: 'l1', jobId: 'j1' }));
  return { units, cents: {}, next: ordered };
}

/** A substitute or replacement is the expected unit itself, come in another form; everything else that comes is a new unit. */
function arrive(world: World, reason: ArrivalReason): World {
  const expected = world.units.find((one) => one.place === 'expected');
  if (reason === 'ordered' || reason === 'substitute' || reason === 'replacement') {
    if (!expected) return reason === 'ordered' ? arrive(world, 'surplus') : world;
    const came = recordUnitEvent(expected, { kind: 'move', move: { to: 'set-aside', by: 'i', at: 't' } }, RULES);
    return came.ok
      ? { ...world, units: world.units.map((one) => (one === expected ? { ...came.unit, arrivalReason: reason } : one)) }
      : world;
  }
  return { ...world, units: [...world.units, newUnit(`u${world.next}`, reason, { lineId: 'l1' })], next: world.next + 1 };
}

const RULES = { writeOffLimit: '20' };

function toEvent(world: World, target: Unit, one: Exclude<Command, { do: 'arrive' }>): UnitEvent | null {
  const id = `e${world.next}`;
  const entry = { id, by: 'i', at: 't', reference: 'd' };
  switch (one.do) {
    case 'move': {
      const evidence = one.evidence
        ? { jobId: 'j2', signature: 's', returnReason: 'not-needed', document: 'd', why: 'w', isOwner: true }
        : {};
      return { kind: 'move', move: { to: destination(target, one.pick), by: 'i', at: 't', ...evidence } };
    }
    case 'money':
      return { kind: 'money', entry: { ...entry, kind: one.kind, amountNet: new Decimal(one.cents).div(100).toFixed(2) } };
    case 'settle':
      return { kind: 'money', entry: { ...entry, kind: one.kind, amountNet: openAmount(target.money).toFixed(2) } };
    case 'undo': {
      const back = target.money[one.entry];
      if (!back) return null;
      const amountNet = new Decimal(back.amountNet).negated().toFixed(2);
      return { kind: 'money', entry: { ...entry, kind: back.kind, amountNet, counters: back.id } };
    }
    case 'claim':
      return { kind: 'claim', claim: { state: one.state, answer: one.answer, closing: one.closing } };
  }
}

/** Mostly where the unit may go, now and then anywhere. */
function destination({ place }: Unit, pick: number): Unit['place'] {
  const ways = UNIT_MOVES.filter((one) => one.from === place).map((one) => one.to);
  return ways[pick % 4 === 0 ? -1 : pick % Math.max(1, ways.length)] ?? UNIT_PLACES[pick % UNIT_PLACES.length] ?? 'expected';
}

function act(world: World, one: Command): World {
  if (one.do === 'arrive') return arrive(world, one.reason);
  const target = world.units[one.unit];
  const event = target ? toEvent(world, target, one) : null;
  if (!target || !event) return world;
  const next = recordUnitEvent(target, event, RULES);
  if (!next.ok) return { ...world, next: world.next + 1 };
  check(target, next.unit, event);
  const sign = event.kind !== 'money' ? 0 : event.entry.kind === 'charged' ? 1 : -1;
  const cents = event.kind === 'money' ? sign * Math.round(Number(event.entry.amountNet) * 100) : 0;
  return {
    units: world.units.map((unit) => (unit === target ? next.unit : unit)),
    cents: { ...world.cents, [target.id]: (world.cents[target.id] ?? 0) + cents },
    next: world.next + 1,
  };
}

/** What every recorded event keeps: one place, along the table, nothing forgotten, no end with money open. */
function check(before: Unit, after: Unit, event: UnitEvent): void {
  expect(after.money.slice(0, before.money.length)).toEqual(before.money);
  expect(after.moves.slice(0, before.moves.length)).toEqual(before.moves);
  if (before.place !== after.place) {
    expect(event.kind).toBe('move');
    expect(UNIT_MOVES).toContainEqual({ from: before.place, to: after.place });
    expect(after.moves.at(-1)).toMatchObject({ from: before.place, to: after.place, by: 'i', at: 't' });
    if (isEndPlace(after.place)) expect(openAmount(after.money).isZero()).toBe(true);
  }
  const open = openAmount(after.money);
  const isQuiet = after.claim.state === 'none' || after.claim.state === 'closed';
  if ((isEndPlace(after.place) || after.place === 'handed-over') && !open.isZero()) expect(isQuiet).toBe(false);
  if (open.lessThan(0)) expect(isQuiet).toBe(false);
}

describe('whatever happens to an order line and its units', () => {
  it('line, places and money always close', () => {
    let reachedEnd = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5 }), fc.array(command, { minLength: 40, maxLength: 120 }), (ordered, commands) => {
        const world = commands.reduce(act, start(ordered));
        const line = lineAccount(ordered, world.units);
        expect(line.closes).toBe(true);
        expect(line.calledOff + line.neverCame + line.stillExpected + line.answered).toBe(ordered);
        const account = unitsAccount(world.units);
        expect(account.closes).toBe(true);
        expect(Object.values(account.at).reduce((sum, n) => sum + n, 0)).toBe(world.units.length);
        expect(Object.values(account.createdBy).reduce((sum, n) => sum + n, 0)).toBe(world.units.length);
        const cents = Object.values(world.cents).reduce((sum, n) => sum + n, 0);
        expect(new Decimal(account.open).times(100).toNumber()).toBe(cents);
        const byPlace = Object.values(account.openAt).reduce((sum, open) => sum.plus(open), new Decimal(0));
        expect(byPlace.toFixed()).toBe(account.open);
        reachedEnd += world.units.filter((one) => isEndPlace(one.place) && one.money.length > 0).length;
      }),
      { numRuns: 300 },
    );
    expect(reachedEnd).toBeGreaterThan(0);
  });

  it('an account that has lost a unit, or counts one twice, does not close', () => {
    const one = newUnit('u0', 'ordered', { lineId: 'l1' });
    expect(lineAccount(2, [one]).closes).toBe(false);
    expect(lineAccount(1, [one, newUnit('u1', 'wrong', { lineId: 'l1' })]).closes).toBe(true);
    expect(unitsAccount([one, one]).closes).toBe(false);
  });
});
