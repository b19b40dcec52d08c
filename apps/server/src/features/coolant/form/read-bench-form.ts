import type { UnitPreference } from '#libs/units';
import { cleanText } from '../../../platform/clean-text.ts';
import { measureOf, plainFigure, saidFigure } from '../units/measure.ts';
import { unitsOfMark } from '../units/unit-mark.ts';
import type { BenchField, ChoiceField, DayField, FieldState, FigureField, ReadForm } from './bench-field.ts';
import { readFigure } from './read-figure.ts';
import { standingFigures } from './standing-figures.ts';

export type Query = Readonly<Record<string, unknown>>;

const LONGEST = 20;

interface Reading {
  readonly figure?: number | undefined;
  readonly choice?: string;
  readonly day?: string | undefined;
  readonly state: FieldState;
  readonly text: string;
  readonly error?: string;
}

interface Sent {
  /** Undefined where the field was not sent at all. */
  readonly text: string | undefined;
  /** What counted the last time, for a figure that is now mistyped. */
  readonly before: number | undefined;
  readonly typedIn: UnitPreference;
  readonly units: UnitPreference;
}

const textOf = (query: Query, name: string): string | undefined => {
  const value = query[name];
  const first: unknown = Array.isArray(value) ? value[0] : value;
  return typeof first === 'string' ? cleanText(first).trim().slice(0, 60) : undefined;
};

/** What a figure comes to when nothing usable is typed. */
function fallBack(field: FigureField, { units }: Sent): Reading {
  const { standing, quantity, decimals } = field;
  if (!standing) return { state: 'empty', text: '' };
  const measure = measureOf(quantity, units);
  const text = plainFigure(measure.shown(standing.value), decimals ?? measure.decimals);
  return { figure: standing.value, state: standing.how, text };
}

function wrongFigure(field: FigureField, sent: Sent, why: string): Reading {
  const text = sent.text ?? '';
  const figure = sent.before ?? field.standing?.value;
  if (figure === undefined)
    return { state: 'empty', text, error: `${why} ${field.isOptional === true ? 'It is left out' : 'Nothing is reckoned'} until then.` };
  return { figure, state: 'kept', text, error: `${why} ${saidFigure(figure, field.quantity, sent.units)} stays in force.` };
}

function readFigureField(field: FigureField, sent: Sent): Reading {
  const { quantity, least, most, holds } = field;
  const byDefault = fallBack(field, sent);
  const { text } = sent;
  if (text === undefined || text === '') return text === undefined || field.standing ? byDefault : { state: 'empty', text: '' };
  if (text.length > LONGEST) return wrongFigure(field, sent, `That is too long for a figure: ${LONGEST} signs at most.`);
  const typed = readFigure(text);
  if (typed === undefined) return wrongFigure(field, sent, 'Type a figure in digits, such as 6.2.');
  const figure = measureOf(quantity, sent.typedIn).typed(typed);
  if (quantity === 'count' && !Number.isInteger(figure)) return wrongFigure(field, sent, 'Type a whole number.');
  const slack = 1e-9 * Math.max(1, Math.abs(most));
  if (figure < least - slack || figure > most + slack) {
    const { shown, decimals } = measureOf(quantity, sent.units);
    const bounds = `${plainFigure(shown(least), decimals)} to ${saidFigure(most, quantity, sent.units)}`;
    return wrongFigure(field, sent, `${holds} ${bounds}.`);
  }
  if (text === byDefault.text && sent.typedIn === sent.units) return byDefault;
  if (sent.typedIn === sent.units) return { figure, state: 'typed', text };
  const measure = measureOf(quantity, sent.units);
  return { figure, state: 'typed', text: plainFigure(measure.shown(figure), measure.decimals + 2) };
}

function readChoiceField({ options, standing }: ChoiceField, text: string | undefined): Reading {
  const chosen = options.find(({ value }) => value === text)?.value;
  if (text !== undefined && chosen === undefined) {
    const inForce = options.find(({ value }) => value === standing.value)?.label ?? standing.value;
    return { choice: standing.value, state: 'kept', text: standing.value, error: `Choose one from the list. “${inForce}” stays in force.` };
  }
  if (chosen === undefined || chosen === standing.value) return { choice: standing.value, state: standing.how, text: standing.value };
  return { choice: chosen, state: 'typed', text: chosen };
}

function readDayField(_field: DayField, text: string | undefined): Reading {
  if (text === undefined || text === '') return { state: 'empty', text: '' };
  if (!/^\d{4}-\d\d-\d\d$/.test(text)) {
    return { state: 'empty', text, error: 'Give the day as year-month-day, such as 2026-03-31. Nothing is reckoned until then.' };
  }
  return { day: text, state: 'typed', text };
}

function readField(field: BenchField, sent: Sent): Reading {
  switch (field.kind) {
    case 'figure':
      return readFigureField(field, sent);
    case 'choice':
      return readChoiceField(field, sent.text);
    case 'day':
      return readDayField(field, sent.text);
  }
}

/**
 * Reads a form of the bench from its address. Nothing is thrown: a mistyped figure gets its message, and what counted before it
 * (or what stands by default) stays in force. Figures are typed in the units named by `in`, else in the person's own.
 */
export function readBenchForm(fields: readonly BenchField[], query: Query, units: UnitPreference): ReadForm {
  const marked = unitsOfMark(textOf(query, 'in') ?? '', units);
  const isOwn = marked.temperature === units.temperature && marked.volume === units.volume && marked.pressure === units.pressure;
  const before = standingFigures(query['was'], fields);
  const read = fields.map((field) => {
    const sent: Sent = { text: textOf(query, field.name), before: before[field.name], typedIn: isOwn ? units : marked, units };
    return [field.name, readField(field, sent)] as const;
  });
  const pick = <Value>(part: (reading: Reading) => Value | undefined): Record<string, Value> =>
    Object.fromEntries(
      read.flatMap(([name, reading]) => {
        const value = part(reading);
        return value === undefined ? [] : [[name, value] as const];
      }),
    );
  return {
    figures: pick(({ figure }) => figure),
    choices: pick(({ choice }) => choice),
    days: pick(({ day }) => day),
    states: pick(({ state }) => state),
    texts: pick(({ text }) => text),
    errors: pick(({ error }) => error),
    isAsked: fields.some(({ name }) => query[name] !== undefined),
  };
}
