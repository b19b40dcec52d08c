import { Transform } from 'class-transformer';
import { IsIn, IsString, Length, Matches, MaxLength } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

/** A figure of the car that the card lacks, with where it comes from. */
export class CardFactDto {
  @IsIn(['capacity', 'freezing-point'], { message: 'Say which figure this is.' })
  key!: 'capacity' | 'freezing-point';

  /** Litres, or °C below zero. */
  @Transform(trimmed)
  @Matches(/^[-\u2212]?\d{1,2}([.,]\d{1,3})?$/, { message: 'Type the figure in digits, such as 6.2.' })
  figure!: string;

  /** For a capacity: dry fill or service refill. */
  @Transform(trimmed)
  @IsString()
  @MaxLength(200, { message: 'Shorten this to 200 letters.' })
  words = '';

  @Transform(trimmed)
  @IsString({ message: 'Say where the figure comes from.' })
  @Length(1, 200, { message: 'Say where the figure comes from: handbook and page, label, own reading. 200 letters at most.' })
  source!: string;

  /** The step to return to. */
  @Matches(/^[a-z-]{1,60}$/, { message: 'Reload the page.' })
  step!: string;
}
