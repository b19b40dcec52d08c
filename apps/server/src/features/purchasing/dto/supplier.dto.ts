import { Transform } from 'class-transformer';
import { IsEmail, IsIn, IsOptional, IsString, Length, Matches, MaxLength, ValidateIf } from 'class-validator';
import { Ticked } from '../../../platform/ticked.decorator.ts';
import { trimmed } from '../../../platform/trimmed.ts';

export const WINDOW_STARTS = ['arrived', 'ordered', 'invoiced'] as const;
const DAYS = /^\d{1,3}$/;
const MONEY = /^\d{1,7}([.,]\d{1,2})?$/;
const MONEY_WORDS = { message: 'Give the amount in figures, such as 6.00, or 0.' };

/** A supplier with the terms that decide what a return costs. */
export class SupplierDto {
  @Transform(trimmed)
  @IsString({ message: 'Type the supplier’s name.' })
  @Length(1, 120, { message: 'Type the supplier’s name, 120 letters at most.' })
  name!: string;

  @Transform(trimmed)
  @Matches(/^$|^\+?[\d\s()/.-]{4,30}$/, { message: 'Type the phone number in digits, such as 0555 0142.' })
  phone = '';

  @Transform(trimmed)
  @ValidateIf((supplier: SupplierDto) => supplier.email !== '')
  @IsEmail({}, { message: 'This is no e-mail address: it needs an @ and a domain, such as name@example.org.' })
  @MaxLength(200, { message: 'Shorten the e-mail address to 200 letters.' })
  email = '';

  /** Our number with them, as it stands on their paper. */
  @Transform(trimmed)
  @IsString()
  @MaxLength(40, { message: 'Shorten the account number to 40 letters.' })
  accountNumber = '';

  /** Days within which a piece must leave; 0: nothing is taken back. */
  @Transform(trimmed)
  @Matches(DAYS, { message: 'Give the days to send a piece back as a whole number, 0 if nothing is taken back.' })
  returnDays!: string;

  @IsIn(WINDOW_STARTS, { message: 'Choose when the return window starts.' })
  windowStart: (typeof WINDOW_STARTS)[number] = 'arrived';

  @Transform(trimmed)
  @Matches(/^(100|\d{1,2}([.,]\d{1,2})?)$/, { message: 'Give what the supplier keeps as a percentage from 0 to 100.' })
  restockingPct = '0';

  /** Cost of one trip back. */
  @Transform(trimmed)
  @Matches(MONEY, MONEY_WORDS)
  returnCarriage = '0';

  /** Cost of one delivery. */
  @Transform(trimmed)
  @Matches(MONEY, MONEY_WORDS)
  carriage = '0';

  @Ticked()
  unopenedOnly?: 'on';

  @Transform(trimmed)
  @Matches(DAYS, { message: 'Give the days until the credit comes as a whole number.' })
  daysToCredit = '30';

  @IsOptional()
  @Matches(/^\d{1,9}$/, { message: 'Reload the page and change it again.' })
  version?: string;
}
