import { Transform } from 'class-transformer';
import { IsIn, IsOptional, IsString, Length, Matches, MaxLength } from 'class-validator';
import { units, vatCategories, type VatCategory } from '#libs/invoicing';
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

  /** Of a new line. */
  @IsIn(units.map(({ code }) => code), { message: 'Choose the unit from the list.' })
  unit = 'C62';

  /** Left out: as the line has it. */
  @IsOptional()
  @IsIn(Object.keys(vatCategories), { message: 'Choose the tax from the list.' })
  vatCategory?: VatCategory;

  @IsOptional()
  @Transform(trimmed)
  @Matches(/^(100|\d{1,2}([.,]\d{1,2})?)$/, { message: 'Give the rate in per cent, such as 23, or 0 where none is charged.' })
  vatRate?: string;

  @Transform(trimmed)
  @Matches(/^$|^(?!0+([.,]0+)?$)\d{1,8}([.,]\d{1,2})?$/, {
    message: 'Give the discount before tax in figures, such as 5.00, or leave it empty.',
  })
  discount = '';

  @Transform(trimmed)
  @IsString()
  @MaxLength(100, { message: 'Shorten the ground to 100 letters.' })
  discountFor = '';

  @Transform(trimmed)
  @IsString({ message: 'Say why the line is changed.' })
  @Length(3, 300, { message: 'Say why the line is changed, in a few words.' })
  why!: string;

  @Ticked()
  remove?: 'on';
}
