import { checkNumber } from '../checks/check-number.ts';
import { monthsLater, parseCalendarDate } from '../checks/calendar-date.ts';
import { TECHNOLOGIES, type CoolantTechnology } from '../data/technologies.ts';
import { refuse, type Grounds, type Outcome, type Problem, type Warning } from '../outcome.ts';
import { SOURCE } from '../sources.ts';

export interface ServiceLifeInput {
  readonly technology: CoolantTechnology;
  /** Day of filling, year-month-day. */
  readonly filledOn: string;
  readonly filledAtKm?: number | undefined;
  /** From the label or the service schedule: beats the trade's usual figure. */
  readonly statedMonths?: number | undefined;
  readonly statedKm?: number | undefined;
  /** Day and reading to judge by. Without them nothing is judged. */
  readonly today?: string | undefined;
  readonly odometerKm?: number | undefined;
}

export interface ServiceLife extends Grounds {
  readonly dueOn: string;
  /** Null where no distance is known. */
  readonly dueAtKm: number | null;
  readonly state: 'in-service' | 'due' | 'not-judged';
}

function checkDate(text: string | undefined, field: string): Problem | undefined {
  if (text === undefined || parseCalendarDate(text) !== undefined) return undefined;
  return { code: 'not-a-date', kind: 'malformed', field, message: `Give the day as year-month-day, such as 2026-03-31, not ${text}.` };
}

function check(input: ServiceLifeInput): Problem | undefined {
  const distance = { unit: 'km', least: 0, most: 5e6 };
  return (
    checkDate(input.filledOn, 'filledOn') ??
    checkDate(input.today, 'today') ??
    checkNumber(input.filledAtKm ?? 0, { ...distance, field: 'filledAtKm', name: 'The odometer at filling' }) ??
    checkNumber(input.odometerKm ?? 0, { ...distance, field: 'odometerKm', name: 'The odometer' }) ??
    checkNumber(input.statedKm ?? 1, { ...distance, field: 'statedKm', name: 'The stated distance', least: 1 }) ??
    checkNumber(input.statedMonths ?? 1, { field: 'statedMonths', name: 'The stated time', unit: 'months', least: 1, most: 240 })
  );
}

function isDue(input: ServiceLifeInput, due: { dueOn: string; dueAtKm: number | null }): ServiceLife['state'] {
  const { today, odometerKm } = input;
  const byDate = today === undefined ? undefined : today >= due.dueOn;
  const byKm = odometerKm === undefined || due.dueAtKm === null ? undefined : odometerKm >= due.dueAtKm;
  if (byDate === undefined && byKm === undefined) return 'not-judged';
  return byDate === true || byKm === true ? 'due' : 'in-service';
}

/**
 * When the coolant is to be changed, by time and distance, whichever comes first.
 *
 * @param input Technology, day and odometer of filling, stated life where label or schedule give one, and today
 * @returns Due day and distance, and whether they are reached; refused for a day that doesn't exist
 * @example serviceLife({ technology: 'organic', filledOn: '2026-03-31', filledAtKm: 80000 }) // dueOn '2031-03-31', dueAtKm 330000
 */
export function serviceLife(input: ServiceLifeInput): Outcome<ServiceLife> {
  const problem = check(input);
  if (problem) return refuse(problem);
  const facts = TECHNOLOGIES[input.technology];
  const filled = parseCalendarDate(input.filledOn);
  if (!filled) throw new RangeError('The day of filling was checked before.');
  const dueOn = monthsLater(filled, Math.round(input.statedMonths ?? facts.serviceYears * 12));
  const lifeKm = input.statedKm ?? facts.serviceKm;
  const dueAtKm = lifeKm === null || input.filledAtKm === undefined ? null : input.filledAtKm + lifeKm;
  const state = isDue(input, { dueOn, dueAtKm });
  const warnings: Warning[] =
    state === 'due' ? [{ code: 'service-due', text: 'The coolant has reached its service life: change it.' }] : [];
  const basis = `${facts.abbreviation}: usually ${facts.serviceYears} years${facts.serviceKm === null ? '' : ` or ${facts.serviceKm} km`}`;
  return {
    ok: true,
    dueOn,
    dueAtKm,
    state,
    assumptions:
      input.statedMonths === undefined
        ? [`${basis} (${facts.basis === 'read' ? 'trade article' : 'from memory'}); the label and the service schedule rule.`]
        : ['Time as stated by the label or the service schedule.'],
    warnings,
    sources: [SOURCE.technology],
  };
}
