import { Transform } from 'class-transformer';
import { IsIn, IsString, Length, Matches } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

export class AdjustmentDto {
  @IsIn(['allowance', 'charge'], { message: 'Choose whether it is taken off or put on.' })
  kind!: 'allowance' | 'charge';

  @Transform(trimmed)
  @Matches(/^(?!0+([.,]0+)?$)\d{1,8}([.,]\d{1,2})?$/, { message: 'Give the amount before tax in figures, such as 10.00.' })
  amount!: string;

  @Transform(trimmed)
  @IsString()
  @Length(3, 100, { message: 'Say what it is for, 100 letters at most.' })
  reason!: string;

  /** Of the lines that it belongs to. */
  @Transform(trimmed)
  @Matches(/^(100|\d{1,2}([.,]\d{1,2})?)$/, { message: 'Choose the rate of the lines that it belongs to.' })
  vatRate!: string;
}
