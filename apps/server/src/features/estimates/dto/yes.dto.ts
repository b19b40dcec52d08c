import { Transform } from 'class-transformer';
import { IsIn, IsString, Length, Matches, MaxLength } from 'class-validator';
import { Ticked } from '../../../platform/ticked.decorator.ts';
import { trimmed } from '../../../platform/trimmed.ts';

const MONEY = /^$|^\d{1,7}([.,]\d{1,2})?$/;
const MONEY_WORDS = { message: 'Give the amount with tax in figures, such as 240.00.' };
const NAME_WORDS = { message: 'Shorten the package to 120 letters.' };
export const PACKAGE_ROWS = [1, 2, 3] as const;

/** The customer's yes as the desk records it: who, when, how, to which packages, up to what sum with tax. */
export class YesDto {
  @Transform(trimmed)
  @IsString({ message: 'Type who said yes.' })
  @Length(1, 120, { message: 'Type who said yes, 120 letters at most.' })
  saidBy!: string;

  @IsIn(['in-person', 'phone', 'message', 'signature'], { message: 'Choose how the yes was given.' })
  how!: string;

  @Matches(/^\d{4}-\d{2}-\d{2}$/, { message: 'Choose the day.' })
  saidDay!: string;

  @Matches(/^([01]\d|2[0-3]):[0-5]\d$/, { message: 'Give the time as hours and minutes, such as 16:20.' })
  saidTime!: string;

  /** The most, tax included. */
  @Transform(trimmed)
  @Matches(/^\d{1,7}([.,]\d{1,2})?$/, MONEY_WORDS)
  ceiling!: string;

  @Transform(trimmed)
  @MaxLength(120, NAME_WORDS)
  name1 = '';

  @Transform(trimmed)
  @Matches(MONEY, MONEY_WORDS)
  gross1 = '';

  @Ticked()
  yes1?: 'on';

  @Transform(trimmed)
  @MaxLength(120, NAME_WORDS)
  name2 = '';

  @Transform(trimmed)
  @Matches(MONEY, MONEY_WORDS)
  gross2 = '';

  @Ticked()
  yes2?: 'on';

  @Transform(trimmed)
  @MaxLength(120, NAME_WORDS)
  name3 = '';

  @Transform(trimmed)
  @Matches(MONEY, MONEY_WORDS)
  gross3 = '';

  @Ticked()
  yes3?: 'on';

  /** The old part goes back to the customer, unless it is a core or a claim. */
  @Ticked()
  oldPartBack?: 'on';

  @Transform(trimmed)
  @IsString()
  @MaxLength(500, { message: 'Shorten the words to 500 letters.' })
  words = '';
}
