import { Transform } from 'class-transformer';
import { IsIn, IsOptional, IsString, Length, Matches, MaxLength } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

export const THERMOSTAT_KINDS = ['unknown', 'wax', 'heated-wax', 'twin', 'motor-valve', 'hybrid'] as const;

/** A vehicle as the desk writes one down. Engine code and build month narrow the catalogue's list for nothing. */
export class VehicleDto {
  /** As on the plate. */
  @Transform(trimmed)
  @Matches(/^[\p{L}\p{N} .-]{1,16}$/u, { message: 'Type the registration as on the plate: letters and digits, 16 at most.' })
  registration!: string;

  @Transform(trimmed)
  @Matches(/^$|^[A-Za-z0-9]{17}$/, { message: 'A VIN has 17 letters and digits. Leave it empty if it is not at hand.' })
  vin = '';

  @Transform(trimmed)
  @IsString({ message: 'Type the make.' })
  @Length(1, 60, { message: 'Type the make, 60 letters at most.' })
  make!: string;

  @Transform(trimmed)
  @IsString({ message: 'Type the model.' })
  @Length(1, 80, { message: 'Type the model, 80 letters at most.' })
  model!: string;

  @Transform(trimmed)
  @Matches(/^$|^[\p{L}\p{N} ./-]{1,20}$/u, { message: 'Type the engine code as on the engine or in the papers, 20 letters at most.' })
  engineCode = '';

  /** Year and month of build, or the year alone. */
  @Transform(trimmed)
  @Matches(/^$|^(19|20)\d\d(-(0[1-9]|1[0-2]))?$/, { message: 'Give the build as year and month, such as 2017-03, or the year alone.' })
  built = '';

  @IsIn(THERMOSTAT_KINDS, { message: 'Choose the kind of thermostat from the list.' })
  thermostatKind: (typeof THERMOSTAT_KINDS)[number] = 'unknown';

  @Transform(trimmed)
  @IsString()
  @MaxLength(2000, { message: 'Shorten the note to 2,000 letters.' })
  note = '';

  @IsOptional()
  @Matches(/^\d{1,9}$/, { message: 'Reload the page and change it again.' })
  version?: string;
}
