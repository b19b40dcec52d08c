import { type Verdict } from '../types/analysis.ts';
import { type Findings } from '../verdict/findings.ts';

export const COLD_LOG =
  'Log again from stone cold (engine off overnight): 20 minutes, most of it above 50 km/h, until the temperature has stayed level for five minutes.';

/** What to log or check next. */
export function advice(findings: Findings, verdict: Verdict): string[] {
  const { grid, air, nominalC, heat, start, kind } = findings;
  const next: string[] = [];
  if (verdict === 'not-enough') next.push(COLD_LOG);
  if (verdict === 'not-enough' && heat.meanSpeedKmh === null) next.push('Log road speed and intake air temperature beside the coolant.');
  if (verdict === 'not-enough' && air.airC === null && heat.meanSpeedKmh !== null) next.push('Log intake or outside air temperature too.');
  if (verdict === 'not-enough' && findings.heater !== 'off') next.push('Leave the heater and the air conditioning off while logging.');
  if (verdict === 'doubtful-data')
    next.push(
      'With everything cold, compare coolant, intake and outside sensors: they should agree within a few degrees. Check plug, wiring and coolant level, then log again.',
    );
  if (verdict === 'stuck-open' || verdict === 'leaks')
    next.push(
      'Before ordering: coolant level, fan not running all the time, sensor against a second thermometer. Radiator-side hose warm long before the engine is: the valve passes.',
    );
  if (verdict === 'opens-early') next.push('Read the stamp on the removed part; check the sensor against a second thermometer.');
  if (verdict === 'stuck-closed')
    next.push('Let it cool down. Then check level, pump and for combustion gas before the thermostat is changed.');
  if (verdict !== 'not-enough' && nominalC === null && kind === 'wax')
    next.push('Give the nominal temperature (stamp, catalogue) to compare the opening with it.');
  if (verdict === 'normal' && start.coldStart !== true) next.push('For the proof sheet, log once more from a cold start.');
  if (grid.longestGapS > 60)
    next.push(`The log has a gap of ${Math.round(grid.longestGapS)} s: keep the logger connected and the screen on.`);
  return next;
}
