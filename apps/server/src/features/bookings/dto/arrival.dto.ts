import { Transform } from 'class-transformer';
import { IsString, Matches, MaxLength } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

export class ArrivalDto {
  @Transform(trimmed)
  @Matches(/^[1-9]\d{0,2}$/, { message: 'Give the number on the key tag, 1 to 999.' })
  keyTag!: string;

  /** Kilometres. */
  @Transform(trimmed)
  @Matches(/^$|^\d{1,7}$/, { message: 'Give the odometer in whole kilometres, or leave it empty.' })
  odometerKm = '';

  @Transform(trimmed)
  @IsString()
  @MaxLength(500, { message: 'Shorten what is left in the car to 500 letters.' })
  leftInCar = '';
}
