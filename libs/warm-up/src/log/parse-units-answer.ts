import { QUANTITIES, type Quantity } from './quantity.ts';
import { readTimeUnit, readUnit } from './read-unit.ts';
import { type LogAnswers } from './types.ts';
import { UNITS_OF } from './units.ts';

export type UnitsAnswer = { ok: true; units: NonNullable<LogAnswers['units']> } | { ok: false; problem: string };

const TEMPERATURES: readonly Quantity[] = ['coolant', 'intake', 'ambient'];
const SYSTEMS: Readonly<Record<string, Required<Pick<NonNullable<LogAnswers['units']>, 'coolant' | 'intake' | 'ambient' | 'speed'>>>> = {
  metric: { coolant: '°C', intake: '°C', ambient: '°C', speed: 'km/h' },
  imperial: { coolant: '°F', intake: '°F', ambient: '°F', speed: 'mph' },
};

/**
 * Understands a person's or a program's answer about units.
 *
 * @param answer `metric`, `imperial`, one temperature unit for all temperatures (`C`, `°F`), pairs (`coolant=F, speed=mph`), or an object
 * or JSON of such pairs
 * @example parseUnitsAnswer('coolant=F, speed=mph') // { ok: true, units: { coolant: '°F', speed: 'mph' } }
 */
export function parseUnitsAnswer(answer: string | Readonly<Record<string, unknown>>): UnitsAnswer {
  if (typeof answer !== 'string') return fromPairs(Object.entries(answer));
  const text = answer.trim();
  const system = SYSTEMS[text.toLowerCase()];
  if (system) return { ok: true, units: { ...system } };
  const temperature = readUnit(text, 'coolant');
  if (temperature) return { ok: true, units: { coolant: temperature, intake: temperature, ambient: temperature } };
  if (text.startsWith('{')) {
    const parsed = parseJson(text);
    if (typeof parsed === 'object' && parsed !== null && !Array.isArray(parsed)) return fromPairs(Object.entries(parsed));
  }
  return fromPairs(text.split(/[,;\n]/).map((pair) => pair.split(/[=:]/).map((part) => part.trim())));
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function fromPairs(pairs: readonly (readonly unknown[])[]): UnitsAnswer {
  const units: NonNullable<LogAnswers['units']> = {};
  for (const [name, value] of pairs) {
    if (typeof name !== 'string' || typeof value !== 'string') return wrong(String(name));
    if (name === 'time') {
      const unit = readTimeUnit(value);
      if (!unit) return { ok: false, problem: `'${value}' is no unit of time; use s, ms, min or h.` };
      units.time = unit;
      continue;
    }
    const quantities = name === 'temperature' ? TEMPERATURES : QUANTITIES.filter((quantity) => quantity === name);
    if (quantities.length === 0) return wrong(name);
    for (const quantity of quantities) {
      const unit = readUnit(value, quantity);
      if (!unit) return { ok: false, problem: `'${value}' is no unit for ${quantity}; use ${UNITS_OF[quantity].join(', ')}.` };
      units[quantity] = unit;
    }
  }
  return { ok: true, units };
}

function wrong(name: string): UnitsAnswer {
  return { ok: false, problem: `'${name}' is not understood: say metric, imperial, °C or °F, or pairs such as coolant=°F, speed=mph.` };
}
