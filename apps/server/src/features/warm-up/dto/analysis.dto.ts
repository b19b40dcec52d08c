import { ApiProperty } from '@nestjs/swagger';
import type { HeaterUse, ThermostatKind } from '#libs/warm-up';

/** One reading of the engine. What was not logged is left out or null. */
export class WarmUpSampleDto {
  /** Seconds, on any clock that only goes forward. */
  timeS!: number;

  /** Coolant, °C. */
  coolantC!: number;

  /** Road speed, km/h. */
  speedKmh?: number;

  /** Engine speed, 1/min. */
  rpm?: number;

  /** Engine load, %. */
  loadPercent?: number;

  /** Outside air, °C. */
  ambientC?: number;

  /** Intake air, °C. */
  intakeC?: number;

  /** Air drawn in, g/s. */
  airFlowGps?: number;
}

/** A warm-up log: `samples` as JSON, or a `file` as the logger wrote it (multipart/form-data), with what is known of the car. */
export class WarmUpAnalysisDto {
  /** JSON: 36,000 at most. */
  samples?: WarmUpSampleDto[];

  /** Multipart: the log as CSV, 36,000 rows and 10 MB at most. */
  @ApiProperty({ type: 'string', format: 'binary' })
  file?: string;

  /** The temperature marked on the thermostat or given by the catalogue, °C. */
  nominalOpeningC?: number;

  /** Left out: wax when `nominalOpeningC` is given, else unknown. Only wax has one opening temperature. */
  @ApiProperty({ enum: ['wax', 'heated-wax', 'twin', 'motor-valve', 'hybrid', 'unknown'] })
  thermostatKind?: ThermostatKind;

  /** Whether the cabin heater was on; unknown if left out. */
  @ApiProperty({ enum: ['off', 'on', 'unknown'] })
  heater?: HeaterUse;

  /** Of a file that does not say them: `metric`, `imperial`, `°F`, or pairs such as `coolant=°F, speed=mph`; as JSON an object of these. */
  units?: string;

  /** Of a file whose columns are not recognised: pairs such as `coolant=Temp 1, time=t`, by header or by number from 1. */
  columns?: string;

  /** Seconds from row to row of a file without a time that can be read. */
  rowIntervalS?: number;
}
