import { COMPLAINTS } from './data/cars.ts';
import { nextId } from './ids.ts';
import type { Random } from './random.ts';
import type { Chapter } from './story.ts';
import { laterBy, workday } from './workshop-hours.ts';
import type { DemoCar } from './write/people.ts';

/** One job of the demo: whose car, what for, how far it has come, when it arrived. */
export interface JobPlan {
  id: string;
  car: DemoCar;
  template: 'thermostat' | 'coolant-change' | 'diagnosis';
  chapter: Chapter;
  createdAt: Date;
  arrivesAt: Date;
  daysAgo: number;
  keyTag: number | null;
  complaint: string;
}

const PAST_JOBS = 104;
const OLDEST_DAYS = 360;

/** The cars in the house today and the near past, so that every stage can be seen. */
const RECENT: readonly (readonly [template: JobPlan['template'], chapter: Chapter, daysAgo: number])[] = [
  ['thermostat', 'gone', 3],
  ['thermostat', 'gone', 2],
  ['coolant-change', 'gone', 2],
  ['thermostat', 'settling', 1],
  ['coolant-change', 'settling', 1],
  ['thermostat', 'run-hot', 1],
  ['thermostat', 'filled', 0],
  ['thermostat', 'closed-up', 0],
  ['thermostat', 'opened', 0],
  ['thermostat', 'opened', 0],
  ['thermostat', 'standing', 0],
  ['coolant-change', 'standing', 0],
  ['diagnosis', 'standing', 0],
  ['thermostat', 'expected', 0],
  ['thermostat', 'expected', -1],
  ['coolant-change', 'expected', -1],
  ['diagnosis', 'expected', -2],
  ['thermostat', 'spoken-of', 0],
  ['diagnosis', 'spoken-of', 0],
  ['thermostat', 'spoken-of', 1],
];

const IN_THE_HOUSE: readonly Chapter[] = ['standing', 'opened', 'closed-up', 'filled', 'run-hot', 'settling'];

export function planJobs(random: Random, { cars, now }: { cars: readonly DemoCar[]; now: Date }): JobPlan[] {
  let keyTag = 0;
  const carOf = (index: number): DemoCar => {
    const car = cars[index % cars.length];
    if (!car) throw new Error('The demo has no cars');
    return car;
  };
  const past = Array.from({ length: PAST_JOBS }, (_, index): JobPlan => {
    const daysAgo = Math.round(OLDEST_DAYS - (index * (OLDEST_DAYS - 6)) / PAST_JOBS);
    const arrivesAt = workday(now, { daysAgo, hour: random.between(8, 11), minute: random.between(0, 3) * 15 });
    const template = random.chance(0.6) ? 'thermostat' : random.chance(0.6) ? 'coolant-change' : 'diagnosis';
    return {
      id: nextId(random),
      // The last cars of the list are kept for those that are here now.
      car: carOf(index % (cars.length - RECENT.length)),
      template,
      chapter: 'gone-and-checked',
      createdAt: laterBy(arrivesAt, -3 * 24 * 60),
      arrivesAt,
      daysAgo,
      keyTag: random.between(1, 30),
      complaint: random.pick(COMPLAINTS),
    };
  });
  const recent = RECENT.map(([template, chapter, daysAgo], index): JobPlan => {
    const arrivesAt =
      daysAgo > 0 ? workday(now, { daysAgo, hour: 8, minute: 15 }) : laterBy(now, daysAgo === 0 ? -240 : -daysAgo * 24 * 60);
    return {
      id: nextId(random),
      car: carOf(cars.length - RECENT.length + index),
      template,
      chapter,
      createdAt: laterBy(now, -(daysAgo + 4) * 24 * 60),
      arrivesAt,
      daysAgo,
      keyTag: IN_THE_HOUSE.includes(chapter) ? (keyTag += 1) : null,
      complaint: random.pick(COMPLAINTS),
    };
  });
  return [...past, ...recent];
}
