import { Transform } from 'class-transformer';
import { Matches } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

export class MenuPriceDto {
  @Matches(/^[a-z0-9-]{1,60}$/, { message: 'Choose the work from the list.' })
  templateKey!: string;

  /** Before tax; empty: by the hours. */
  @Transform(trimmed)
  @Matches(/^$|^\d{1,8}([.,]\d{1,2})?$/, { message: 'Give the price before tax in figures, such as 148.00, or leave it empty.' })
  priceNet = '';
}
