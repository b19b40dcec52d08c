import { type HeaterUse } from '../model/heater-share.ts';
import { type Sample } from './sample.ts';
import { type ThermostatKind } from './thermostat-kind.ts';

/** One log and what is known about the car. */
export interface WarmUpInput {
  samples: readonly Sample[];
  /** The temperature marked on the thermostat or given by the catalogue, °C. */
  nominalOpeningC?: number;
  /** Default `wax` when a nominal temperature is given, else `unknown`. */
  thermostatKind?: ThermostatKind;
  /** Whether the cabin heater was on while logging. Default `unknown`. */
  heater?: HeaterUse;
  /** Readings taken at most. Default 36,000. */
  mostSamples?: number;
}
