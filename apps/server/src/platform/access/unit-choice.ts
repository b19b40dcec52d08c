import type { UnitChoice } from '../request-context.ts';

/**
 * A person's units out of their stored JSON; what is missing or unknown is metric.
 *
 * @example unitChoice({ temperature: 'F', volume: 'bucket' }) // { temperature: 'F', volume: 'L', pressure: 'kPa', torque: 'Nm' }
 */
export function unitChoice(stored: unknown): UnitChoice {
  const said = typeof stored === 'object' && stored !== null ? (stored as Readonly<Record<string, unknown>>) : {};
  return {
    temperature: said['temperature'] === 'F' ? 'F' : 'C',
    volume: said['volume'] === 'qt' ? 'qt' : 'L',
    pressure: said['pressure'] === 'psi' ? 'psi' : 'kPa',
    torque: said['torque'] === 'lbf-ft' ? 'lbf-ft' : 'Nm',
  };
}
