import type { Action } from '#libs/checklist';

/** Numbers that are the same for the same seed (mulberry32). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

export const pick = <T>(random: () => number, list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;

type Act = Pick<Action, 'kind' | 'step' | 'value'>;

const COLD = { tempC: 22, instrument: 'contact-probe', place: 'top-hose', pressure: 'none', hose: 'soft' };

/** What people do on a thermostat card, right and wrong, in whatever order: some of it fits, some becomes a difference. */
const ACTS: readonly Act[] = [
  { kind: 'tick', step: 'keys-tagged', value: null },
  { kind: 'record', step: 'odometer', value: { value: 86_412 } },
  { kind: 'record', step: 'odometer', value: { value: 86_421 } },
  { kind: 'tick', step: 'damage-noted', value: null },
  { kind: 'record', step: 'thermostat-kind', value: { choice: 'wax' } },
  { kind: 'pass', step: 'measured-cold', value: COLD },
  { kind: 'pass', step: 'measured-cold', value: { ...COLD, tempC: 71 } },
  { kind: 'record', step: 'level-on-arrival', value: { belowMarkMl: 400 } },
  { kind: 'tick', step: 'tray', value: null },
  { kind: 'tick', step: 'cap-off', value: null },
  { kind: 'record', step: 'drained', value: { litres: 4.8 } },
  { kind: 'record', step: 'drained', value: { litres: 5.1, about: true } },
  { kind: 'record', step: 'kept', value: { litres: 0 } },
  { kind: 'tick', step: 'housing-off', value: null },
  { kind: 'pass', step: 'variant', value: { variant: 'NR-5488', basis: 'readings' } },
  { kind: 'tick', step: 'fitted', value: null },
  { kind: 'pass-without', step: 'torqued', value: { reason: 'no-tool', words: null } },
  { kind: 'pass', step: 'torqued', value: { setAt: 10, unit: 'Nm', tightened: 3, of: 3, inSequence: true, document: 'Manual', page: '4' } },
  { kind: 'pour-jug', step: 'first-fill', value: { productMl: 1000, waterMl: 1000 } },
  { kind: 'tick', step: 'first-fill', value: null },
  { kind: 'record', step: 'waste-booked', value: { litres: 4.8 } },
  { kind: 'not-applicable', step: 'covered', value: { reason: 'nothing to cover' } },
  { kind: 'take-back', step: 'drained', value: { reason: 'misread' } },
  { kind: 'take-back', step: 'measured-cold', value: { reason: 'wrong car' } },
  { kind: 'start-timer', step: 'opening', value: null },
  { kind: 'stop-timer', step: 'opening', value: null },
  { kind: 'note', step: 'card', value: { words: 'Clip brittle' } },
  { kind: 'finding', step: 'tray', value: { words: 'Hose swollen', severity: 'soon' } },
  { kind: 'wait', step: 'card', value: { for: 'part', who: null, until: null, words: null } },
];

/** In the order of the work more often than not, so that cards get far. */
export function randomActs(random: () => number, count: number): Act[] {
  let at = 0;
  return Array.from({ length: count }, () => {
    if (random() < 0.3) return pick(random, ACTS);
    const act = ACTS[at % ACTS.length] as Act;
    at += 1 + Math.floor(random() * 2);
    return act;
  });
}
