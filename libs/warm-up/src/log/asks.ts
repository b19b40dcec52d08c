import { quantile } from '../grid/quantile.ts';
import { type Channel } from './channel.ts';
import { QUANTITY_NAMES } from './quantity.ts';
import { type Ask } from './types.ts';
import { UNITS_OF } from './units.ts';

/** No engine regulates at 150 °C or more, and none stays at 20 °C: where the highest readings lie says which unit would make sense. */
const SURELY_FAHRENHEIT = 135;
const SURELY_CELSIUS = { low: 45, high: 125 };

/** Asks for the unit of a quantity; a guess is offered with its reason, for the person to take or not. */
export function askUnit(channel: Channel): Ask {
  return {
    field: `units.${channel.quantity}`,
    question: `In which unit is '${channel.header}' (${QUANTITY_NAMES[channel.quantity]})? The file does not say.`,
    options: [...UNITS_OF[channel.quantity]],
    suggestion: channel.quantity === 'coolant' ? suggestion(channel.values.filter((value) => !Number.isNaN(value))) : null,
  };
}

function suggestion(values: Float64Array): Ask['suggestion'] {
  const high = quantile(values, 0.95);
  const shown = Math.round(high);
  if (high >= SURELY_FAHRENHEIT && high <= 260)
    return { answer: '°F', because: `the highest readings are about ${shown}: as °C no engine runs that hot` };
  if (high >= SURELY_CELSIUS.low && high <= SURELY_CELSIUS.high)
    return { answer: '°C', because: `the highest readings are about ${shown}: as °F that would be a nearly cold engine` };
  return null;
}

export function askCoolantColumn(headers: readonly string[]): Ask {
  return {
    field: 'columns.coolant',
    question: 'Which column holds the coolant temperature?',
    options: headers.filter((header) => header !== ''),
    suggestion: null,
  };
}

export function askTime(reasons: readonly string[], headers: readonly string[]): Ask[] {
  const why = reasons.length > 0 ? ` (${reasons.join('; ')})` : '';
  return [
    {
      field: 'columns.time',
      question: `Which column holds the time?${why}`,
      options: headers.filter((header) => header !== ''),
      suggestion: null,
    },
    { field: 'rowIntervalS', question: 'Or how many seconds lie between two rows?', options: [], suggestion: null },
  ];
}

export function askTimeUnit(header: string): Ask {
  return {
    field: 'units.time',
    question: `In which unit is the time in '${header}'?`,
    options: ['s', 'ms', 'min', 'h', 'days'],
    suggestion: null,
  };
}
