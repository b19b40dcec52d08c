import type { UnitPreference } from '#libs/units';
import type { UnitChoice } from '../../../platform/request-context.ts';

/** A person's choice as the units library knows it. */
export function unitsOf(choice: UnitChoice): UnitPreference {
  return {
    temperature: choice.temperature === 'F' ? '°F' : '°C',
    volume: choice.volume === 'qt' ? 'US qt' : 'L',
    pressure: choice.pressure,
    torque: choice.torque === 'lbf-ft' ? 'lbf·ft' : 'Nm',
    length: 'mm',
  };
}
