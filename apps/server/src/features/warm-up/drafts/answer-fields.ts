import type { LogAnswers } from '#libs/warm-up';

type AnsweredQuantity = keyof NonNullable<LogAnswers['columns']>;

type FieldName = 'Time' | 'Coolant' | 'Speed' | 'Rpm' | 'Load' | 'Intake' | 'Ambient' | 'AirFlow';

export interface AnswerField {
  quantity: AnsweredQuantity;
  word: string;
  column: `column${FieldName}`;
  unit: `unit${FieldName}`;
  units: readonly string[];
}

/** One row of the form that corrects what was understood, for each quantity. */
export const ANSWER_FIELDS: readonly AnswerField[] = [
  { quantity: 'time', word: 'Time', column: 'columnTime', unit: 'unitTime', units: ['s', 'ms', 'min', 'h', 'days'] },
  { quantity: 'coolant', word: 'Coolant', column: 'columnCoolant', unit: 'unitCoolant', units: ['°C', '°F', 'K'] },
  { quantity: 'speed', word: 'Road speed', column: 'columnSpeed', unit: 'unitSpeed', units: ['km/h', 'mph', 'm/s'] },
  { quantity: 'rpm', word: 'Engine speed', column: 'columnRpm', unit: 'unitRpm', units: ['1/min'] },
  { quantity: 'load', word: 'Engine load', column: 'columnLoad', unit: 'unitLoad', units: ['%'] },
  { quantity: 'intake', word: 'Intake air', column: 'columnIntake', unit: 'unitIntake', units: ['°C', '°F', 'K'] },
  { quantity: 'ambient', word: 'Outside air', column: 'columnAmbient', unit: 'unitAmbient', units: ['°C', '°F', 'K'] },
  { quantity: 'airFlow', word: 'Air flow', column: 'columnAirFlow', unit: 'unitAirFlow', units: ['g/s', 'kg/h', 'lb/min'] },
];

/** The form's field for the field of an ask, such as units.coolant. */
export function fieldOfAsk(asked: string): string {
  const [what, quantity] = asked.split('.');
  const row = ANSWER_FIELDS.find((field) => field.quantity === quantity);
  return row ? (what === 'units' ? row.unit : row.column) : asked;
}
