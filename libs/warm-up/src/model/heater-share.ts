import { SLOW_ENGINE } from './slow-engine.ts';

/** Whether the cabin heater was on, as far as anyone knows. */
export type HeaterUse = 'on' | 'off' | 'unknown';

/** How much of a full heater to expect: as told, else as the weather asks (full at 0 °C, none from 20 °C up). */
export function heaterShare(airC: number, heater: HeaterUse): number {
  if (heater === 'off') return 0;
  if (heater === 'on') return 1;
  return Math.max(0, Math.min(1, (SLOW_ENGINE.heaterOffAboveC - airC) / SLOW_ENGINE.heaterOffAboveC));
}
