import { Transform } from 'class-transformer';
import { IsIn, IsString, Matches, MaxLength } from 'class-validator';
import type { HeaterUse, ThermostatKind } from '#libs/warm-up';
import { trimmed } from '../../../platform/trimmed.ts';
import { HEATER_USES, type LogRole, THERMOSTAT_KINDS } from '../log-setting.ts';

/** What a person says of a log beside its readings. */
export class LogSettingDto {
  /** Asked first: only plain wax has one opening temperature. */
  @IsIn(THERMOSTAT_KINDS, { message: 'Say which kind of thermostat the car has; “not known” is an answer.' })
  thermostatKind!: ThermostatKind;

  /** °C, as marked on the part that was in the car while this was driven. */
  @Transform(trimmed)
  @Matches(/^$|^(?:(?:[5-9]\d|1[01]\d)(?:[.,]\d)?|120)$/, {
    message: 'Type the marked opening temperature in °C, from 50 to 120, such as 88, or leave it empty.',
  })
  nominalOpeningC: string = '';

  @IsIn(['before', 'after'], { message: 'Say whether this was driven before or after the repair.' })
  role!: LogRole;

  @Transform(trimmed)
  @Matches(/^\d{4}-\d\d-\d\d$/, { message: 'Give the day on which this was driven.' })
  loggedOn!: string;

  @IsIn(HEATER_USES, { message: 'Say whether the heater was on; “not known” is an answer.' })
  heater: HeaterUse = 'unknown';

  /** Pairs read from a tester, a line each. */
  @Transform(trimmed)
  @IsString({ message: 'Type the readings a line each, such as 2:30 41.' })
  @MaxLength(20_000, { message: 'These are more readings than anybody types: send the logger’s file.' })
  readings: string = '';
}
