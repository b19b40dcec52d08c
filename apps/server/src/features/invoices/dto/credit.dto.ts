import { Transform } from 'class-transformer';
import { ArrayMaxSize, IsArray, IsIn, IsString, Length, Matches } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

/** A form sends one value for one field of a name, and a list for several. */
function listed({ value }: { value: unknown }): unknown {
  if (value === undefined) return [];
  const values: unknown[] = Array.isArray(value) ? value : [value];
  return values.map((one) => (typeof one === 'string' ? one.trim().replace(',', '.') : one));
}

const MOST_LINES = 500;

export class CreditDto {
  @IsIn(['rest', 'parts'], { message: 'Choose whether all of it or a part is credited.' })
  what!: 'rest' | 'parts';

  @Transform(trimmed)
  @IsString({ message: 'Say what is corrected and why.' })
  @Length(3, 200, { message: 'Say what is corrected and why, in a few words.' })
  reason!: string;

  @Transform(listed)
  @IsArray()
  @ArrayMaxSize(MOST_LINES)
  @Matches(/^[^\p{Cc}]{1,120}$/u, { each: true, message: 'Reload the page and choose again.' })
  lineIds: string[] = [];

  @Transform(listed)
  @IsArray()
  @ArrayMaxSize(MOST_LINES)
  @Matches(/^$|^\d{1,6}(\.\d{1,3})?$/, { each: true, message: 'Give the quantities in figures, such as 1 or 0.5, or leave them empty.' })
  quantities: string[] = [];

  @Transform(listed)
  @IsArray()
  @ArrayMaxSize(MOST_LINES)
  @Matches(/^$|^\d{1,8}(\.\d{1,2})?$/, {
    each: true,
    message: 'Give the amounts before tax in figures, such as 12.00, or leave them empty.',
  })
  amounts: string[] = [];
}
