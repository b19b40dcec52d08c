import { type HeaterUse, type LogAnswers, parseUnitsAnswer, type ThermostatKind } from '#libs/warm-up';
import type { FieldError } from '../../../platform/domain-error.ts';
import { HEATER_USES, THERMOSTAT_KINDS } from '../log-setting.ts';
import { badRequest } from '../warm-up.errors.ts';
import { readColumns } from './read-columns.ts';

/** What is known beside the readings. */
export interface AnalysisSettings {
  nominalOpeningC?: number;
  thermostatKind?: ThermostatKind;
  heater?: HeaterUse;
  answers: LogAnswers;
}

const FIELDS = new Set(['samples', 'file', 'nominalOpeningC', 'thermostatKind', 'heater', 'units', 'columns', 'rowIntervalS']);

/**
 * What stands beside samples or file: JSON values, or the texts of a form, in which an empty one says nothing.
 *
 * @throws bad-warm-up with all that is wrong
 */
export function readSettings(body: Readonly<Record<string, unknown>>): AnalysisSettings {
  const errors: FieldError[] = Object.keys(body)
    .filter((name) => !FIELDS.has(name))
    .map((name) => ({ field: name.slice(0, 60), message: 'There is no such field here: leave it out.' }));
  const given = (name: string): unknown => (body[name] === '' || body[name] === null ? undefined : body[name]);
  const nominalOpeningC = numberIn(given('nominalOpeningC'));
  const rowIntervalS = numberIn(given('rowIntervalS'));
  const thermostatKind = THERMOSTAT_KINDS.find((kind) => kind === given('thermostatKind'));
  const heater = HEATER_USES.find((use) => use === given('heater'));
  if (nominalOpeningC === null || (nominalOpeningC !== undefined && !(nominalOpeningC >= 50 && nominalOpeningC <= 120)))
    errors.push({ field: 'nominalOpeningC', message: 'Send the marked opening temperature in °C, from 50 to 120; is it in °F?' });
  if (rowIntervalS === null || (rowIntervalS !== undefined && !(rowIntervalS > 0 && rowIntervalS <= 3600)))
    errors.push({ field: 'rowIntervalS', message: 'Send the seconds from row to row, more than 0 and at most 3600.' });
  if (given('thermostatKind') !== undefined && !thermostatKind)
    errors.push({ field: 'thermostatKind', message: `Send one of ${THERMOSTAT_KINDS.join(', ')}.` });
  if (given('heater') !== undefined && !heater) errors.push({ field: 'heater', message: `Send one of ${HEATER_USES.join(', ')}.` });
  const units = unitsIn(given('units'), errors);
  const columns = readColumns(given('columns'));
  if (columns === null)
    errors.push({ field: 'columns', message: 'Send pairs such as coolant=Temp 1, time=t, by header or by number from 1.' });
  if (errors.length > 0) throw badRequest(errors);
  return {
    ...(typeof nominalOpeningC === 'number' ? { nominalOpeningC } : {}),
    ...(thermostatKind ? { thermostatKind } : {}),
    ...(heater ? { heater } : {}),
    answers: {
      ...(units ? { units } : {}),
      ...(columns ? { columns } : {}),
      ...(typeof rowIntervalS === 'number' ? { rowIntervalS } : {}),
    },
  };
}

/** Null where it is no number. A decimal comma is one. */
function numberIn(raw: unknown): number | null | undefined {
  if (raw === undefined) return undefined;
  const value = typeof raw === 'string' && /^-?\d{1,6}([.,]\d{1,6})?$/.test(raw.trim()) ? Number(raw.trim().replace(',', '.')) : raw;
  return typeof value === 'number' && Number.isFinite(value) ? value : null;
}

function unitsIn(raw: unknown, errors: FieldError[]): LogAnswers['units'] {
  if (raw === undefined) return undefined;
  if (typeof raw !== 'string' && (typeof raw !== 'object' || raw === null || Array.isArray(raw))) {
    errors.push({ field: 'units', message: 'Send metric, imperial, °C or °F, or pairs such as coolant=°F, speed=mph.' });
    return undefined;
  }
  const answer = parseUnitsAnswer(typeof raw === 'string' ? raw.slice(0, 500) : { ...raw });
  if (answer.ok) return answer.units;
  errors.push({ field: 'units', message: answer.problem });
  return undefined;
}
