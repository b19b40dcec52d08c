import { type LogAnswers, parseUnitsAnswer } from '#libs/warm-up';
import type { FieldError } from '../../../platform/domain-error.ts';
import { dayColumn } from '../../../web/dates.ts';
import type { DraftDto } from '../dto/draft.dto.ts';
import type { LogSettingDto } from '../dto/log-setting.dto.ts';
import type { LogSetting } from '../log-setting.ts';
import { badLogForm } from '../warm-up.errors.ts';
import { ANSWER_FIELDS } from './answer-fields.ts';

/** @throws bad-log-form for a day that doesn't exist or is still to come */
export function settingOf(input: LogSettingDto, { today, answers }: { today: string; answers: LogAnswers }): LogSetting {
  const { role, loggedOn, thermostatKind, heater, nominalOpeningC } = input;
  if (dayColumn(loggedOn) === undefined) throw badLogForm([{ field: 'loggedOn', message: 'Give the day on which this was driven.' }]);
  if (loggedOn > today)
    throw badLogForm([{ field: 'loggedOn', message: 'This day is still to come: give the day on which it was driven.' }]);
  const nominal = nominalOpeningC === '' ? null : Number(nominalOpeningC.replace(',', '.'));
  return { role, loggedOn, thermostatKind, heater, nominalOpeningC: nominal, answers };
}

/** What was answered about a file. @throws bad-log-form for a unit that is none */
export function answersOf(input: DraftDto): LogAnswers {
  const units: NonNullable<LogAnswers['units']> = {};
  const columns: NonNullable<LogAnswers['columns']> = {};
  const errors: FieldError[] = [];
  for (const { quantity, column, unit } of ANSWER_FIELDS) {
    if (input[column] !== '') columns[quantity] = input[column];
    if (input[unit] === '') continue;
    const answer = parseUnitsAnswer({ [quantity]: input[unit] });
    if (answer.ok) Object.assign(units, answer.units);
    else errors.push({ field: unit, message: answer.problem });
  }
  if (errors.length > 0) throw badLogForm(errors);
  const rowIntervalS = Number(input.rowIntervalS.replace(',', '.'));
  return {
    ...(Object.keys(units).length > 0 ? { units } : {}),
    ...(Object.keys(columns).length > 0 ? { columns } : {}),
    ...(rowIntervalS > 0 ? { rowIntervalS } : {}),
  };
}
