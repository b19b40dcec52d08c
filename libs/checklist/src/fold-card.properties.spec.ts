import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  ACTION_KINDS,
  applyAction,
  type CardState,
  emptyCard,
  foldCard,
  type HoldKey,
  STAGE_MOVES,
  stepsOf,
  TEMPLATES,
  THERMOSTAT_JOB,
} from './index.ts';
import { untilKeysOut } from './testing/whole-job.ts';

/** Deeper by hand now and then; enough here to catch a slip in a second or two. */
const RUNS = 80;
const JOB = untilKeysOut();
const PLACES = [...stepsOf(THERMOSTAT_JOB).map((step) => step.key), 'card', 'opening', 'nowhere'];
const IDS = JOB.map((action) => action.id);

const value = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...JOB.map((action) => action.value)) },
  fc.constantFrom<unknown>(
    { reason: 'tool-not-here' },
    { reason: 'x', to: 'opened' },
    { reason: 'x', to: 'filled' },
    { of: IDS[0], reason: 'x' },
  ),
  fc.constantFrom<unknown>(
    { tempC: 55, instrument: 'infrared', place: 'top-hose', pressure: 'none' },
    { tempC: 20, instrument: 'contact-probe', place: 'top-hose', pressure: 'some' },
    { reason: 'too-warm', second: 'ines', pressure: 'none', words: 'allowed' },
    { reason: 'too-warm', second: 'ines', pressure: 'some', words: 'allowed' },
    { of: IDS[5], reason: 'wrong' },
  ),
  fc.jsonValue(),
);
const sensible = fc.record({
  id: fc.oneof(fc.constantFrom(...IDS), fc.uuid()),
  card: fc.constant('card-14'),
  deviceId: fc.constantFrom('tablet-1', 'tablet-2'),
  kind: fc.constantFrom(...ACTION_KINDS),
  step: fc.constantFrom(...PLACES),
  value,
  readAt: fc.integer({ min: 0, max: 600 }).map((minute) => new Date(Date.UTC(2026, 5, 9, 7, minute)).toISOString()),
  by: fc.constantFrom('jory', 'ines'),
  byProof: fc.constantFrom('session', 'picked-offline'),
});
/** A real job in order, with other taps, repeats and rubbish strewn in. */
const history = fc
  .tuple(
    fc.integer({ min: 0, max: JOB.length }),
    fc.array(fc.tuple(fc.nat(60), fc.oneof({ weight: 8, arbitrary: sensible }, fc.anything())), { maxLength: 40 }),
  )
  .map(([length, strewn]) => {
    const all: unknown[] = JOB.slice(0, length);
    for (const [at, action] of strewn) all.splice(at % (all.length + 1), 0, action);
    return all;
  });
const site = fc.record({ onePersonSite: fc.boolean() });

function trail(
  actions: readonly unknown[],
  setting: { onePersonSite: boolean },
  check: (before: CardState, after: CardState, action: unknown) => void,
): CardState {
  return actions.reduce<CardState>(
    (before, action) => {
      const after = applyAction(before, action);
      check(before, after, action);
      return after;
    },
    emptyCard(THERMOSTAT_JOB, setting),
  );
}

function idOf(action: unknown): string | null {
  const id = typeof action === 'object' && action !== null ? (action as { id?: unknown }).id : null;
  return typeof id === 'string' ? id : null;
}

const isOpen = (card: CardState, key: HoldKey): boolean =>
  card.holds[key] !== undefined && card.holds[key].state !== 'shut' && !card.holds[key].spent;
const entries = (card: CardState): number =>
  card.history.length + Object.values(card.steps).reduce((sum, step) => sum + step.history.length, 0);

describe('whatever arrives, in whatever order', () => {
  it('never throws, on any template', () => {
    fc.assert(
      fc.property(fc.constantFrom(...TEMPLATES), fc.array(fc.oneof(sensible, fc.anything()), { maxLength: 30 }), (template, actions) => {
        expect(foldCard(template, actions).template).toBe(template);
      }),
      { numRuns: RUNS },
    );
  });

  it('every action ends in a history or among the differences, exactly once or in both with a note', () => {
    fc.assert(
      fc.property(history, site, (actions, setting) => {
        trail(actions, setting, (before, after, action) => {
          if (after === before) {
            expect(before.received.some((one) => one.id === idOf(action))).toBe(true);
            return;
          }
          const added = entries(after) - entries(before);
          const told = after.differences.length - before.differences.length;
          expect([added, told].join()).toMatch(/^(1,0|0,1|1,1)$/);
          if (told === 1) expect(after.differences.at(-1)?.action).toBe(action);
        });
      }),
      { numRuns: RUNS },
    );
  });

  it('repeats change nothing', () => {
    fc.assert(
      fc.property(history, site, fc.array(fc.nat(200), { maxLength: 20 }), (actions, setting, picks) => {
        const once = foldCard(THERMOSTAT_JOB, actions, setting);
        const repeated = [...actions];
        for (const pick of picks) {
          const action = actions[pick % Math.max(1, actions.length)];
          const after = repeated.indexOf(action);
          if (idOf(action) !== null) repeated.splice(after + 1 + (pick % (repeated.length - after)), 0, action);
        }
        const again = foldCard(THERMOSTAT_JOB, repeated, setting);
        expect(JSON.stringify(plain(again))).toBe(JSON.stringify(plain(once)));
      }),
      { numRuns: RUNS },
    );
  });

  it('the order of receipt alone decides: one by one or from the start, the card is the same', () => {
    fc.assert(
      fc.property(history, fc.nat(100), (actions, cut) => {
        const at = cut % (actions.length + 1);
        const start = foldCard(THERMOSTAT_JOB, actions.slice(0, at));
        const onward = actions.slice(at).reduce<CardState>((card, action) => applyAction(card, action), start);
        expect(JSON.stringify(plain(onward))).toBe(JSON.stringify(plain(foldCard(THERMOSTAT_JOB, actions))));
      }),
      { numRuns: RUNS },
    );
  });

  it('no step behind a shut hold point is ever done, and nothing is opened hot', () => {
    const behind = stepsOf(THERMOSTAT_JOB).filter((step) => step.behind);
    fc.assert(
      fc.property(history, site, (actions, setting) => {
        trail(actions, setting, (before, after) => {
          for (const step of behind) {
            const grew = (after.steps[step.key]?.completions.length ?? 0) > (before.steps[step.key]?.completions.length ?? 0);
            const poured = after.facts.jugsPoured > before.facts.jugsPoured && step.evidence.kind === 'jugs';
            const isWork = grew && after.received.length > before.received.length;
            const hadEntry = before.steps[step.key]?.history.some(
              (entry) => entry.kind === 'tick' || entry.kind === 'record' || entry.kind === 'pass',
            );
            if (isWork && !hadEntry) expect(step.behind?.every((hold) => isOpen(before, hold))).toBe(true);
            if (poured) expect(isOpen(before, 'closed-and-torqued')).toBe(true);
          }
          if (after.isOpened && !before.isOpened) expect(isOpen(before, 'safe-to-open')).toBe(true);
        });
      }),
      { numRuns: RUNS },
    );
  });

  it('safe to open is only passed by a cold pressureless reading, or by a second person where there is one', () => {
    fc.assert(
      fc.property(history, site, (actions, setting) => {
        const card = foldCard(THERMOSTAT_JOB, actions, setting);
        const hold = card.holds['safe-to-open'];
        const step = card.steps['measured-cold'];
        if (hold?.state === 'passed') {
          expect(step?.value?.kind).toBe('cold-reading');
          if (step?.value?.kind !== 'cold-reading') return;
          expect(step.value.reading.pressure).toBe('none');
          expect(step.value.reading.tempC + step.value.reading.expandedUncertaintyC).toBeLessThanOrEqual(50);
        }
        if (hold?.state === 'passed-without') {
          const entry = step?.history.find((one) => one.actionId === step.actionId);
          expect(setting.onePersonSite).toBe(false);
          expect(entry?.value).toMatchObject({ second: 'ines', pressure: 'none' });
          expect(entry?.by).not.toBe('ines');
        }
      }),
      { numRuns: RUNS },
    );
  });

  it('without take-backs the stage only ever moves forward, or back after it was announced', () => {
    fc.assert(
      fc.property(history, site, (actions, setting) => {
        const kept = actions.filter((action) => (action as { kind?: unknown } | null)?.kind !== 'take-back');
        trail(kept, setting, (before, after) => {
          if (before.stage === after.stage) return;
          const isBack = STAGE_MOVES.some((m) => m.kind === 'back' && m.from === before.stage && m.to === after.stage);
          const path = ['expected', 'standing', 'opened', 'closed-up', 'filled', 'run-hot', 'settling', 'settled', 'keys-out'];
          expect(isBack || path.indexOf(after.stage) > path.indexOf(before.stage)).toBe(true);
        });
      }),
      { numRuns: RUNS },
    );
  });
});

/** The card without what can't be compared as text: rubbish inside differences. */
function plain(card: CardState): unknown {
  const { differences, template, ...rest } = card;
  return {
    ...rest,
    template: template.key,
    differences: differences.map(({ code, why, actionId, settled }) => ({ code, why, actionId, settled })),
  };
}
