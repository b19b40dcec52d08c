import { Transform } from 'class-transformer';
import { IsString, Length } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';
import { PaymentDto } from './payment.dto.ts';

export class PayBackDto extends PaymentDto {
  @Transform(trimmed)
  @IsString({ message: 'Say why the money goes back.' })
  @Length(3, 200, { message: 'Say why the money goes back, in a few words.' })
  why!: string;
}
