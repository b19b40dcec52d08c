import type { UnitPreference } from '#libs/units';

/** The units that a form's figures were typed in, to travel with them in its address. @example unitMark(METRIC_UNITS) // 'C-L-kPa' */
export function unitMark({ temperature, volume, pressure }: UnitPreference): string {
  return [temperature.slice(1), volume === 'L' ? 'L' : 'qt', pressure].join('-');
}

/** The other way round; what nobody wrote leaves the person's own units. */
export function unitsOfMark(mark: string, own: UnitPreference): UnitPreference {
  const match = /^([CF])-(L|qt)-(kPa|psi)$/.exec(mark);
  if (!match) return own;
  return {
    ...own,
    temperature: match[1] === 'F' ? '°F' : '°C',
    volume: match[2] === 'qt' ? 'US qt' : 'L',
    pressure: match[3] === 'psi' ? 'psi' : 'kPa',
  };
}
