import { Transform } from 'class-transformer';
import { IsIn, IsString, Matches, MaxLength } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

export class PaymentDto {
  @Transform(trimmed)
  @Matches(/^\d{1,9}([.,]\d{1,2})?$/, { message: 'Give the amount in figures, such as 252.53.' })
  amount!: string;

  @IsIn(['cash', 'card', 'transfer', 'other'], { message: 'Choose how it was paid.' })
  method!: string;

  /** A receipt's or transfer's reference; never a card number. */
  @Transform(trimmed)
  @IsString()
  @MaxLength(60, { message: 'Shorten the reference to 60 letters.' })
  @Matches(/^(?!(?:\D*\d){13,19}\D*$)/, { message: 'This looks like a card number: leave it out, the slip’s reference is enough.' })
  reference = '';

  @Matches(/^\d{4}-\d{2}-\d{2}$/, { message: 'Choose the day.' })
  paidOn!: string;
}
