import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { THERMOSTAT_JOB } from '#libs/checklist';
import { earliestPlan, phasesToPlan, type PlanPhase, type PlanRequest, timeUntil, type Window } from './index.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const COLD = { airC: 15, timeConstantMs: 2 * HOUR, tempC: 15, atMs: 0, hotC: 90 };
const at = (hour: number, day = 0): number => (day * 24 + hour) * HOUR;
const DAYS = [0, 1, 2].map((day) => ({ fromMs: at(8, day), toMs: at(17, day) }));

function request(phases: readonly PlanPhase[], over: Partial<PlanRequest> = {}): PlanRequest {
  return {
    phases,
    earliestMs: at(9),
    openings: DAYS,
    places: [
      { id: 'bay-1', kind: 'bay', busy: [] },
      { id: 'apron', kind: 'apron', busy: [] },
    ],
    people: [{ id: 'jory', busy: [] }],
    engine: COLD,
    ...over,
  };
}

const open: PlanPhase = { key: 'open', durationMs: HOUR, place: 'bay', attendance: 'hands-on', coldEnough: { belowC: 48 }, staysPut: true };
const fit: PlanPhase = { key: 'fit', durationMs: HOUR, place: 'bay', attendance: 'hands-on' };
const starts = (plan: ReturnType<typeof earliestPlan>): readonly (readonly [string, number])[] =>
  plan.ok ? plan.phases.map(({ key, fromMs }) => [key, fromMs / HOUR] as const) : [];

describe('the earliest plan', () => {
  it('waits until the engine is cold enough', () => {
    const engine = { ...COLD, tempC: 90, atMs: at(8) };
    const coldMs = timeUntil({ startC: 90, airC: 15, timeConstantMs: 2 * HOUR }, 48) ?? Number.NaN;
    const plan = earliestPlan(request([open], { engine }));
    expect(plan.ok && plan.phases[0]?.fromMs).toBe(at(8) + Math.ceil(coldMs));
  });

  it('waits again after the hot run before it is opened for topping up', () => {
    const run: PlanPhase = { key: 'run', durationMs: HOUR, place: 'apron', attendance: 'within-earshot', endsHot: true };
    const top: PlanPhase = { key: 'top', durationMs: HOUR / 4, place: 'anywhere', attendance: 'hands-on', coldEnough: { belowC: 48 } };
    const plan = earliestPlan(request([run, top]));
    const cool = Math.ceil(timeUntil({ startC: 90, airC: 15, timeConstantMs: 2 * HOUR }, 48) ?? Number.NaN);
    expect(plan.ok && plan.phases.map(({ fromMs }) => fromMs)).toEqual([at(9), at(10) + cool]);
  });

  it('a car that can not be moved keeps its bay, so both phases move behind what is in the way', () => {
    const places = [{ id: 'bay-1', kind: 'bay', busy: [{ fromMs: at(10.5), toMs: at(12) }] }] as const;
    expect(starts(earliestPlan(request([open, fit], { places })))).toEqual([
      ['open', 12],
      ['fit', 13],
    ]);
    const movable = earliestPlan(request([{ ...open, staysPut: false }, fit], { places }));
    expect(starts(movable)).toEqual([
      ['open', 9],
      ['fit', 12],
    ]);
  });

  it('takes the other bay when that ends earlier, and the hands that are free first', () => {
    const places = [
      { id: 'bay-1', kind: 'bay', busy: [{ fromMs: at(9), toMs: at(15) }] },
      { id: 'bay-2', kind: 'bay', busy: [] },
    ] as const;
    const people = [
      { id: 'jory', busy: [{ fromMs: at(9), toMs: at(11) }] },
      { id: 'ines', busy: [] },
    ];
    const plan = earliestPlan(request([fit], { places, people }));
    expect(plan.ok && plan.phases).toEqual([{ key: 'fit', fromMs: at(9), toMs: at(10), placeId: 'bay-2', personId: 'ines' }]);
  });

  it('no phase is split over the night, cooling needs nobody', () => {
    const cool: PlanPhase = { key: 'cool', durationMs: 10 * HOUR, place: 'anywhere', attendance: 'nobody' };
    const plan = earliestPlan(request([fit, cool, fit], { earliestMs: at(16.5) }));
    expect(starts(plan)).toEqual([
      ['fit', 32],
      ['cool', 33],
      ['fit', 56],
    ]);
  });

  it('within earshot takes nobody’s hands, but needs the place open', () => {
    const people = [{ id: 'jory', busy: [{ fromMs: at(0), toMs: at(17) }] }];
    const listen: PlanPhase = { key: 'run', durationMs: HOUR, place: 'apron', attendance: 'within-earshot' };
    expect(starts(earliestPlan(request([listen], { people, earliestMs: at(3) })))).toEqual([['run', 8]]);
    expect(starts(earliestPlan(request([fit], { people })))).toEqual([['fit', 32]]);
  });

  it('parts and waits hold a phase back', () => {
    expect(starts(earliestPlan(request([{ ...fit, notBeforeMs: at(13) }])))).toEqual([['fit', 13]]);
    expect(starts(earliestPlan(request([fit, { ...fit, key: 'later', waitBeforeMs: HOUR }])))).toEqual([
      ['fit', 9],
      ['later', 11],
    ]);
  });

  it.each([
    ['no bay', request([fit], { places: [] }), 'There is no bay to plan with.'],
    ['too long for any opening', request([{ ...fit, durationMs: 10 * HOUR }]), 'No opening is long enough'],
    ['nobody there', request([fit], { people: [] }), 'No opening is long enough'],
    ['air too warm', request([open], { engine: { ...COLD, airC: 50, tempC: 60 } }), 'never gets cold enough'],
    ['a phase without length', request([{ ...fit, durationMs: 0 }]), 'a length above nothing'],
    ['a time that ends before it begins', request([fit], { openings: [{ fromMs: 2, toMs: 1 }] }), 'ends before it begins'],
    ['stuck in a bay, wanted on the apron', request([open, { ...fit, place: 'apron' }]), "can't be moved in between"],
    ['no temperature', request([fit], { engine: { ...COLD, tempC: Number.NaN } }), 'is missing'],
    ['no time constant', request([fit], { engine: { ...COLD, timeConstantMs: 0 } }), 'more than nothing'],
  ])('%s: says why', (_name, bad, why) => {
    const plan = earliestPlan(bad);
    expect(plan.ok ? '' : plan.why).toContain(why);
  });

  it('a thermostat job that comes in warm', () => {
    const phases = phasesToPlan(THERMOSTAT_JOB, 2);
    expect(phases.filter(({ staysPut }) => staysPut).map(({ key }) => key)).toEqual(['opening', 'comparing']);
    const plan = earliestPlan(request(phases, { earliestMs: at(8), engine: { ...COLD, tempC: 90, atMs: at(8) } }));
    expect(plan.ok).toBe(true);
    if (!plan.ok) return;
    const phase = (key: string): Window => plan.phases.find((one) => one.key === key) ?? { fromMs: Number.NaN, toMs: Number.NaN };
    expect(phase('opening').fromMs).toBeGreaterThan(at(9.5));
    expect(phase('settling').fromMs - phase('running').toMs).toBeGreaterThan(1.5 * HOUR);
    expect(phase('next-morning').fromMs - phase('running').toMs).toBeGreaterThanOrEqual(2 * HOUR * Math.log(75 / 8));
  });
});

describe('against every plan there is, on a small clock', () => {
  const window = fc
    .tuple(fc.integer({ min: 0, max: 14 }), fc.integer({ min: 1, max: 5 }))
    .map(([from, length]) => ({ fromMs: from, toMs: from + length }));
  const phase = fc.record({
    durationMs: fc.integer({ min: 1, max: 3 }),
    attendance: fc.constantFrom('hands-on', 'within-earshot', 'nobody'),
    staysPut: fc.boolean(),
    waitBeforeMs: fc.integer({ min: 0, max: 2 }),
  }) as fc.Arbitrary<Omit<PlanPhase, 'key' | 'place'>>;
  const world = fc.record({
    phases: fc.array(phase, { minLength: 1, maxLength: 3 }),
    openings: fc.array(window, { minLength: 1, maxLength: 3 }),
    bays: fc.array(fc.array(window, { maxLength: 2 }), { minLength: 1, maxLength: 2 }),
    people: fc.array(fc.array(window, { maxLength: 2 }), { minLength: 1, maxLength: 2 }),
  });

  it('none ends earlier', () => {
    let found = 0;
    fc.assert(
      fc.property(world, ({ phases, openings, bays, people }) => {
        const small = request(
          phases.map((one, i) => ({ ...one, key: `p${i}`, place: 'bay' as const })),
          {
            earliestMs: 0,
            openings,
            places: bays.map((busy, i) => ({ id: `b${i}`, kind: 'bay' as const, busy })),
            people: people.map((busy, i) => ({ id: `w${i}`, busy })),
          },
        );
        const plan = earliestPlan(small);
        expect(plan.ok ? plan.endsMs : null).toBe(bruteForce(small));
        if (plan.ok) found += 1;
      }),
      { numRuns: 300 },
    );
    expect(found).toBeGreaterThan(50);
  });
});

const HORIZON = 30;

/** Tries every start, place and pair of hands of every phase; the earliest end, or null. */
function bruteForce({ phases, openings, places, people }: PlanRequest): number | null {
  const isFree = (busy: readonly Window[], from: number, to: number): boolean => busy.every((one) => to <= one.fromMs || one.toMs <= from);
  const search = (index: number, ready: number, held: { place: number; since: number } | null): number | null => {
    const phase = phases[index];
    if (!phase) return ready;
    let best: number | null = null;
    const first = ready + (index > 0 ? (phase.waitBeforeMs ?? 0) : 0);
    for (let from = first; from <= HORIZON; from += 1) {
      const to = from + phase.durationMs;
      const isOpen = openings.some((one) => one.fromMs <= from && to <= one.toMs);
      if (phase.attendance !== 'nobody' && !isOpen) continue;
      if (phase.attendance === 'hands-on' && !people.some(({ busy }) => isFree(busy, from, to))) continue;
      for (const [place, { busy }] of places.entries()) {
        if (held && held.place !== place) continue;
        const since = held?.since ?? from;
        if (!isFree(busy, since, to)) continue;
        const end = search(index + 1, to, phase.staysPut === true ? { place, since } : null);
        if (end !== null && (best === null || end < best)) best = end;
      }
    }
    return best;
  };
  return search(0, 0, null);
}
