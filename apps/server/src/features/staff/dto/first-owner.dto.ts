import { Transform } from 'class-transformer';
import { IsIn, IsString, Length, Matches } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

const ZONES = new Set(Intl.supportedValuesOf('timeZone'));
export const TIME_ZONES: readonly string[] = [...ZONES];

export class FirstOwnerDto {
  @Transform(trimmed)
  @IsString({ message: 'Type the name of the workshop.' })
  @Length(1, 120, { message: 'Type the name of the workshop, 120 letters at most.' })
  workshopName!: string;

  @Transform(trimmed)
  @IsString({ message: 'Type your own name.' })
  @Length(1, 80, { message: 'Type your own name, 80 letters at most.' })
  displayName!: string;

  @Transform(trimmed)
  @Matches(/^[\p{L}\p{N}._-]{2,40}$/u, { message: 'Choose 2 to 40 letters or digits without spaces.' })
  name!: string;

  @IsString({ message: 'Choose a secret.' })
  @Length(12, 200, { message: 'Choose a secret of at least 12 letters: three or four words are easy to keep.' })
  secret!: string;

  @IsIn(TIME_ZONES, { message: 'Choose a time zone from the list.' })
  timeZone!: string;

  @Matches(/^[A-Z]{3}$/, { message: 'Give the currency as three capitals, such as EUR.' })
  currency!: string;

  @Matches(/^[A-Z]{2}$/, { message: 'Give the country as two capitals, such as IE.' })
  country!: string;
}
