import { Transform } from 'class-transformer';
import { IsString, Matches, MaxLength } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

const MONEY = /^-?\d{1,9}([.,]\d{1,2})?$/;
const counted = (what: string): { message: string } => ({ message: `Give ${what} in figures, such as 252.53; 0 where there is none.` });

export class CashUpDto {
  @Transform(trimmed)
  @Matches(/^\d{1,9}([.,]\d{1,2})?$/, counted('the cash in the drawer'))
  cash!: string;

  @Transform(trimmed)
  @Matches(MONEY, counted('the sum of the card slips'))
  card!: string;

  @Transform(trimmed)
  @Matches(MONEY, counted('what came by bank'))
  transfer!: string;

  @Transform(trimmed)
  @Matches(MONEY, counted('what came otherwise'))
  other!: string;

  @Transform(trimmed)
  @Matches(/^\d{1,9}([.,]\d{1,2})?$/, counted('the cash that goes to the bank'))
  banked!: string;

  /** Where the count differs. */
  @Transform(trimmed)
  @IsString()
  @MaxLength(200, { message: 'Shorten the reason to 200 letters.' })
  why = '';

  /** The last payment that the page showed: what came after it belongs to the next time. */
  @Matches(/^$|^[0-9a-f-]{36}$/, { message: 'Reload the page and count again.' })
  upTo = '';
}
