import { describe, expect, it } from '@jest/globals';
import { releaseDecision } from './release-decision.ts';
import type { Unit } from './units.repository.ts';

const SUPPLIER = {
  id: 's',
  name: 'Halfmoon Factors',
  returnDays: 28,
  windowStart: 'arrived',
  restockingPct: '0',
  returnCarriage: '0.00',
  unopenedOnly: false,
  daysToCredit: 30,
} as const;

function unit(variantId: string, change: Partial<Unit> = {}, terms: Partial<Unit['variant']['supplier']> = {}): Unit {
  return {
    id: variantId,
    code: 'AAAAAA',
    label: 'AAA-AAA',
    whose: 'key 14',
    place: 'set-aside',
    arrivalReason: 'ordered',
    isOpened: false,
    arrivedAt: new Date('2026-06-01T08:00:00Z'),
    returnBy: new Date('2026-06-29T00:00:00Z'),
    createdAt: new Date('2026-05-31T08:00:00Z'),
    job: { id: 'j', number: 1, keyTag: 14 },
    orderLine: null,
    variant: { id: variantId, partNumber: variantId, name: 'Thermostat', priceNet: '20.00', supplier: { ...SUPPLIER, ...terms } },
    money: [],
    openNet: '0.00',
    ...change,
  };
}

const FACTS = { variantId: 'A', isFitted: false, isProofPassed: false, keptIds: new Set<string>(), today: '2026-06-09', leadDays: 5 };
const decide = (units: Unit[], facts: Partial<typeof FACTS> = {}): string[] =>
  releaseDecision(units, { ...FACTS, ...facts }).map(({ unit: { id }, to }) => `${id} ${to}`);

describe('releaseDecision', () => {
  it('leaves all where they are until something is proven', () => {
    expect(decide([unit('A'), unit('B')])).toEqual([]);
  });

  it('sends the others back after the proof, the chosen one never', () => {
    expect(decide([unit('A'), unit('B'), unit('C')], { isProofPassed: true })).toEqual(['B to-return', 'C to-return']);
  });

  it('leaves alone what a person took off the way back', () => {
    expect(decide([unit('A'), unit('B'), unit('C')], { isProofPassed: true, keptIds: new Set(['B']) })).toEqual(['C to-return']);
  });

  it('fits the chosen one once the card says so, and sends a second one of it back', () => {
    expect(decide([unit('A'), unit('B')], { isFitted: true })).toEqual(['A fitted']);
    expect(decide([unit('A', { place: 'fitted' }), unit('A')], { isProofPassed: true })).toEqual(['A to-return']);
  });

  it.each([
    ['2026-06-23', []],
    ['2026-06-24', ['B to-return']],
    ['2026-06-29', ['B to-return']],
    ['2026-06-30', []],
  ])('on %s, five days before the last one', (today, expected) => {
    expect(decide([unit('A'), unit('B')], { today })).toEqual(expected);
  });

  it('sends a wrong or damaged piece back at once, opened or late', () => {
    const opened = unit('B', { arrivalReason: 'wrong', isOpened: true }, { unopenedOnly: true });
    expect(decide([unit('A'), opened])).toEqual(['B to-return']);
  });

  it.each([
    ['opened, of unopened-only terms', unit('B', { isOpened: true }, { unopenedOnly: true })],
    ['of a supplier that takes nothing back', unit('B', {}, { returnDays: 0 })],
    ['not here', unit('B', { place: 'expected' })],
  ])('keeps a piece that is %s', (_what, piece) => {
    expect(decide([unit('A'), piece], { isProofPassed: true })).toEqual([]);
  });
});
