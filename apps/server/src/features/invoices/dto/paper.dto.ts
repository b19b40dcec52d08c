import { Transform } from 'class-transformer';
import { IsString, MaxLength } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

export class PaperDto {
  /** One piece of advice to a line. */
  @Transform(trimmed)
  @IsString()
  @MaxLength(1_000, { message: 'Shorten the advice to 1,000 letters.' })
  advice = '';

  @Transform(trimmed)
  @IsString()
  @MaxLength(60, { message: 'Shorten the order number to 60 letters.' })
  orderReference = '';

  @Transform(trimmed)
  @IsString()
  @MaxLength(60, { message: 'Shorten the reference to 60 letters.' })
  buyerReference = '';
}
