import type { CardState } from '#libs/checklist';
import { dateText, dateTimeText } from '../../../web/dates.ts';
import type { BenchContext } from '../bench-context.ts';
import type { Standing } from '../form/bench-field.ts';
import type { KnownFigures } from '../refill/known.ts';
import { saidFigure } from '../units/measure.ts';
import type { FactKey } from './fact-keys.ts';
import type { StatedFact } from '../../customers/vehicle-facts.service.ts';

export interface JobFacts {
  readonly state: CardState;
  readonly facts: readonly StatedFact<FactKey>[];
  /** Names of those who wrote on the card, by id. */
  readonly names: ReadonlyMap<string, string>;
}

const newest = (facts: readonly StatedFact<FactKey>[], key: FactKey): StatedFact<FactKey> | undefined =>
  facts.find((fact) => fact.key === key);

/** The system was opened more than once: what the card sums up is more than what is out now. */
export const isOpenedAgain = ({ steps }: CardState): boolean => (steps['first-fill']?.round ?? 0) > 0;

function saidOf(fact: StatedFact<FactKey>, { workshop }: BenchContext): string {
  const who = `${fact.enteredBy} ${dateText(fact.enteredAt, workshop.timeZone)}`;
  return `${[fact.words, fact.source, who].filter((part) => part !== '').join(', ')}.`;
}

/** The newest statement, with those that differ beside it: none is written over. */
function stated(facts: readonly StatedFact<FactKey>[], key: 'capacity' | 'cap', context: BenchContext): Standing<number> | undefined {
  const fact = newest(facts, key);
  if (fact?.figure == null) return undefined;
  const quantity = key === 'capacity' ? 'volume' : 'pressure';
  const others = new Set(facts.filter((one) => one.key === key && one.figure !== fact.figure).map(({ figure }) => figure));
  const also = [...others].map((figure) => saidFigure(figure ?? 0, quantity, context.units)).join(', ');
  return { value: fact.figure, how: 'known', said: [saidOf(fact, context), also === '' ? '' : `Also stated: ${also}.`].join(' ').trim() };
}

function onCard({ state, names }: JobFacts, name: string, { workshop }: BenchContext): Standing<number> | undefined {
  const number = state.facts.numbers[name];
  if (!number) return undefined;
  const step = state.steps[number.step];
  const who = step?.by == null ? '' : `${names.get(step.by) ?? 'somebody'} `;
  const when = step?.readAt == null ? 'the card' : dateTimeText(new Date(step.readAt), workshop.timeZone);
  return { value: number.value, how: 'known', said: `${number.about ? 'About: ' : ''}${who}${when}.` };
}

function missing(job: JobFacts, context: BenchContext): Standing<number> | undefined {
  if (job.state.facts.levels['missingOnArrivalL'] === null) {
    return { value: 0, how: 'assumed', said: 'The tank was empty on arrival: how much was missing is not known.' };
  }
  const found = onCard(job, 'missingOnArrivalL', context);
  return found && { ...found, value: Math.max(0, found.value) };
}

/** Read on this card, else the newest of what was stated of the car's strength. */
function strength(job: JobFacts, context: BenchContext): { name: 'staysReading' | 'staysPercent'; standing: Standing<number> } | undefined {
  const read = onCard(job, 'strengthBeforeC', context);
  if (read) return { name: 'staysReading', standing: read };
  const fact = job.facts.find(({ key, figure }) => (key === 'freezing-point' || key === 'strength') && figure !== null);
  if (fact?.figure == null) return undefined;
  const standing: Standing<number> = { value: fact.figure, how: 'known', said: saidOf(fact, context) };
  return { name: fact.key === 'strength' ? 'staysPercent' : 'staysReading', standing };
}

function product({ facts }: JobFacts, context: BenchContext): Standing<string> | undefined {
  const technology = newest(facts, 'technology');
  const same = context.products.find((one) => one.technology === technology?.words);
  if (same) return { value: `shelf-${same.id}`, how: 'known', said: 'The shelf’s product of the technology stated for this car.' };
  const [first] = context.products;
  return (
    first && {
      value: `shelf-${first.id}`,
      how: 'assumed',
      said: 'Assumed: the first on the shelf. Look up what the vehicle maker approves.',
    }
  );
}

function glycol({ facts }: JobFacts, context: BenchContext, productId: string | undefined): Standing<string> | undefined {
  const fact = newest(facts, 'glycol');
  if (fact?.words === 'ethylene' || fact?.words === 'propylene') return { value: fact.words, how: 'known', said: saidOf(fact, context) };
  const chosen = context.products.find(({ id }) => `shelf-${id}` === productId);
  return chosen && { value: chosen.glycol, how: 'assumed', said: 'Assumed: as the product on the shelf.' };
}

/** What the bench's form begins with for a job: the card's figures and the car's memory, each with who said so. */
export function knownFigures(job: JobFacts, context: BenchContext): KnownFigures {
  const stays = strength(job, context);
  const chosen = product(job, context);
  const isRefill = /refill/i.test(newest(job.facts, 'capacity')?.words ?? '');
  const isAgain = isOpenedAgain(job.state);
  return {
    figures: {
      holds: stated(job.facts, 'capacity', context),
      cap: stated(job.facts, 'cap', context),
      missing: isAgain ? { value: 0, how: 'assumed', said: 'Opened again: counted in what was filled before.' } : missing(job, context),
      out: isAgain ? undefined : onCard(job, 'drainedL', context),
      kept: isAgain ? undefined : onCard(job, 'keptL', context),
      ...(stays ? { [stays.name]: stays.standing } : {}),
    },
    choices: {
      product: chosen,
      glycol: glycol(job, context, chosen?.value),
      kind: isRefill ? { value: 'service-refill', how: 'known', said: 'As stated for this car.' } : undefined,
      stays: stays?.name === 'staysPercent' ? { value: 'percent', how: 'known', said: '' } : undefined,
    },
  };
}
