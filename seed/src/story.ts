import type { Action } from '#libs/checklist';
import { laterBy } from './workshop-hours.ts';

/** How far a job of the demo has come. */
export type Chapter =
  'spoken-of' | 'expected' | 'standing' | 'opened' | 'closed-up' | 'filled' | 'run-hot' | 'settling' | 'gone' | 'gone-and-checked';

type Scripted = [kind: Action['kind'], step: string, value?: unknown, minutes?: number];

export interface StoryFacts {
  odometerKm: number;
  capacityL: number;
  drainedL: number;
  missingMl: number;
  variant: string;
  strengthC: number;
  morningMl: number;
}

/** How much concentrate and water the first fill takes: half and half of the space, in the jug's marks. */
function fill({ drainedL, missingMl }: StoryFacts): { productMl: number; waterMl: number } {
  const space = Math.round((drainedL * 1000 + missingMl) / 100) * 50;
  return { productMl: space, waterMl: space };
}

function thermostatScript(facts: StoryFacts): Record<string, Scripted[]> {
  const { productMl, waterMl } = fill(facts);
  return {
    standing: [
      ['tick', 'keys-tagged'],
      ['record', 'odometer', { value: facts.odometerKm }, 2],
      ['tick', 'damage-noted', null, 4],
      ['record', 'thermostat-kind', { choice: 'wax' }, 1],
    ],
    opened: [
      ['tick', 'covered', null, 5],
      ['record', 'access-off', { items: ['engine cover', 'air duct'] }, 12],
      ['pass', 'measured-cold', { tempC: 24, instrument: 'contact-probe', place: 'top-hose', pressure: 'none', hose: 'soft' }, 4],
      ['record', 'level-on-arrival', { belowMarkMl: facts.missingMl }, 2],
      ['tick', 'tray', null, 2],
      ['tick', 'cap-off', null, 2],
      ['record', 'drained', { litres: facts.drainedL }, 14],
      ['record', 'kept', { litres: 0 }, 1],
      ['tick', 'housing-off', null, 12],
    ],
    'closed-up': [
      ['tick', 'removed-part', null, 4],
      ['pass', 'variant', { variant: facts.variant, basis: 'readings' }, 6],
      ['tick', 'recess-clean', null, 6],
      ['tick', 'fitted', null, 6],
      [
        'pass',
        'torqued',
        { setAt: 10, unit: 'Nm', tightened: 3, of: 3, inSequence: true, document: 'Demo manual, cooling', page: '19-4' },
        4,
      ],
      ['tick', 'hoses-on', null, 6],
    ],
    filled: [
      ['pour-jug', 'first-fill', { productMl, waterMl: 0 }, 6],
      ['pour-jug', 'first-fill', { productMl: 0, waterMl }, 4],
      ['tick', 'first-fill', null, 1],
      ['record', 'bled', { choice: 'open-cap' }, 8],
      ['record', 'held-cold', { choice: 'pressure-held' }, 6],
    ],
    'run-hot': [
      ['pass', 'tools-counted', { counted: 7, of: 7 }, 2],
      ['tick', 'short-run', null, 6],
      ['pour-jug', 'topped-up', { productMl: 100, waterMl: 150 }, 4],
      ['tick', 'topped-up', null, 1],
      ['tick', 'run-hot', null, 18],
      ['pass', 'heater-hoses', { choice: 'both-hot' }, 2],
      ['pass', 'radiator-side', { choice: 'cold-to-hot' }, 3],
      ['pass', 'no-leak', { choice: 'none' }, 2],
      ['record', 'fan', { choice: 'seen' }, 4],
    ],
    settling: [
      ['tick', 'left-to-cool', null, 30],
      ['record', 'strength', { value: facts.strengthC, instrument: 'refractometer' }, 4],
      ['record', 'waste-booked', { litres: facts.drainedL }, 4],
      ['record', 'access-on', { items: [] }, 8],
      ['tick', 'bay-clean', null, 4],
    ],
    gone: [['tick', 'keys-out', null, 20]],
    'gone-and-checked': [
      ['record', 'cold-level', { belowMarkMl: facts.morningMl, productMl: 0, waterMl: Math.max(0, facts.morningMl) }, 18 * 60],
      ['tick', 'after-log', null, 40],
    ],
  };
}

const WITHOUT_VARIANT = new Set(['removed-part', 'variant', 'recess-clean', 'fitted', 'housing-off']);
const ORDER: readonly Chapter[] = [
  'spoken-of',
  'expected',
  'standing',
  'opened',
  'closed-up',
  'filled',
  'run-hot',
  'settling',
  'gone',
  'gone-and-checked',
];

export const isReached = (chapter: Chapter, of: Chapter): boolean => ORDER.indexOf(of) <= ORDER.indexOf(chapter);

/** The card's actions up to a chapter, each at its time. */
export function tellStory(
  { template, chapter, startsAt, facts }: { template: string; chapter: Chapter; startsAt: Date; facts: StoryFacts },
  make: (kind: Action['kind'], step: string, rest: { value: unknown; readAt: Date }) => Action,
): Action[] {
  const script = template === 'diagnosis' ? diagnosisScript(facts) : thermostatScript(facts);
  let at = startsAt;
  return ORDER.filter((part) => isReached(chapter, part)).flatMap((part) =>
    (script[part] ?? [])
      .filter(([, step]) => template !== 'coolant-change' || !WITHOUT_VARIANT.has(step))
      .map(([kind, step, value = null, minutes = 1]) => {
        at = laterBy(at, minutes);
        return make(kind, step, { value, readAt: at });
      }),
  );
}

function diagnosisScript(facts: StoryFacts): Record<string, Scripted[]> {
  return {
    standing: [
      ['tick', 'keys-tagged'],
      ['record', 'odometer', { value: facts.odometerKm }, 2],
      ['record', 'thermostat-kind', { choice: 'wax' }, 1],
    ],
    gone: [
      ['record', 'codes', { items: [] }, 10],
      ['record', 'level-on-arrival', { belowMarkMl: facts.missingMl }, 2],
      ['record', 'sensors-agree', { choice: 'agree' }, 4],
      ['tick', 'before-log', null, 40],
      ['record', 'verdict', { choice: 'opens-early' }, 20],
      ['tick', 'closed-again', null, 2],
      ['tick', 'keys-out', null, 5],
    ],
  };
}
