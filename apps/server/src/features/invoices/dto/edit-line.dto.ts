import { Transform } from 'class-transformer';
import { IsString, Length, Matches, MaxLength } from 'class-validator';
import { Ticked } from '../../../platform/ticked.decorator.ts';
import { trimmed } from '../../../platform/trimmed.ts';

export class EditLineDto {
  /** Which line; empty: a new one. */
  @IsString()
  @MaxLength(300, { message: 'Reload the page and change the line again.' })
  origin = '';

  @Transform(trimmed)
  @IsString()
  @Length(1, 200, { message: 'Say what the line is for, 200 letters at most.' })
  description!: string;

  @Transform(trimmed)
  @Matches(/^\d{1,6}([.,]\d{1,3})?$/, { message: 'Give the quantity in figures, such as 2.4.' })
  quantity!: string;

  @Transform(trimmed)
  @Matches(/^\d{1,8}([.,]\d{1,4})?$/, { message: 'Give the price before tax in figures, such as 62.00.' })
  unitPrice!: string;

  @Transform(trimmed)
  @IsString({ message: 'Say why the line is changed.' })
  @Length(3, 300, { message: 'Say why the line is changed, in a few words.' })
  why!: string;

  @Ticked()
  remove?: 'on';
}
