import type { HeaterUse, LogAnswers, ThermostatKind } from '#libs/warm-up';

export const THERMOSTAT_KINDS: readonly ThermostatKind[] = ['wax', 'heated-wax', 'twin', 'motor-valve', 'hybrid', 'unknown'];
export const HEATER_USES: readonly HeaterUse[] = ['off', 'on', 'unknown'];

export type LogRole = 'before' | 'after';
export type LogSource = 'file' | 'typed';

/** What a person knows of a log beside its readings. */
export interface LogSetting {
  role: LogRole;
  /** ISO day on which it was driven. */
  loggedOn: string;
  thermostatKind: ThermostatKind;
  nominalOpeningC: number | null;
  heater: HeaterUse;
  /** About the file: its units, its columns. */
  answers: LogAnswers;
}
