import { Transform } from 'class-transformer';
import { IsIn, IsString, Length, Matches, MaxLength } from 'class-validator';
import { PostalAddressDto } from '../../../platform/postal-address.dto.ts';
import { Ticked } from '../../../platform/ticked.decorator.ts';
import { trimmed } from '../../../platform/trimmed.ts';

const ZONES: readonly string[] = Intl.supportedValuesOf('timeZone');
const MONEY = /^\d{1,6}([.,]\d{1,2})?$/;
const SHARE = /^(100([.,]0{1,2})?|\d{1,2}([.,]\d{1,2})?)$/;
const DEGREES = /^[+−-]?\d{1,2}([.,]\d)?$/;
const money = (what: string): { message: string } => ({ message: `Give ${what} in figures, such as 62.00.` });

export class WorkshopDto extends PostalAddressDto {
  @Transform(trimmed)
  @IsString()
  @Length(1, 120, { message: 'Type the name of the workshop, 120 letters at most.' })
  name!: string;

  @Matches(/^[A-Z]{2}$/, { message: 'Give the country as two capitals, such as IE.' })
  country!: string;

  @Transform(trimmed)
  @IsString()
  @MaxLength(40, { message: 'Shorten the phone number to 40 letters.' })
  phone = '';

  @Transform(trimmed)
  @IsString()
  @MaxLength(200, { message: 'Shorten the e-mail address to 200 letters.' })
  email = '';

  @Transform(trimmed)
  @IsString()
  @MaxLength(30, { message: 'Shorten the VAT number to 30 letters.' })
  vatId = '';

  @Transform(trimmed)
  @Matches(/^$|^[A-Za-z0-9 ]{5,42}$/, { message: 'Give the account as its IBAN, letters and digits only, or leave it empty.' })
  payTo = '';

  @IsIn(ZONES, { message: 'Choose a time zone from the list.' })
  timeZone!: string;

  @Matches(/^[A-Z]{3}$/, { message: 'Give the currency as three capitals, such as EUR.' })
  currency!: string;

  @Transform(trimmed)
  @Matches(MONEY, money('the price of an hour'))
  labourRate!: string;

  @Transform(trimmed)
  @Matches(/^\d{1,3}([.,]\d{1,2})?$/, { message: 'Give the mark-up on parts in per cent, such as 35.' })
  partsMarkupPct!: string;

  @Transform(trimmed)
  @Matches(MONEY, money('the waste charge for a litre'))
  wasteChargePerL!: string;

  @Transform(trimmed)
  @Matches(SHARE, { message: 'Give the VAT rate in per cent, such as 23.' })
  vatRatePct!: string;

  @Matches(/^\d{1,3}$/, { message: 'Give the days in figures, such as 14.' })
  payWithinDays!: string;

  /** Pieces are ready to go back so many days before their supplier's last day. */
  @Matches(/^\d{1,2}$/, { message: 'Give the days in figures, such as 5.' })
  returnLeadDays = '5';

  @Transform(trimmed)
  @Matches(MONEY, money('the price from which a piece has a label'))
  labelFromNet = '50';

  @Transform(trimmed)
  @Matches(/^-?\d{1,4}$/, { message: 'Give the height above the sea in metres, such as 240.' })
  altitudeM!: string;

  @Transform(trimmed)
  @Matches(DEGREES, { message: 'Give the coldest air in °C, such as -22.' })
  coldestAirC!: string;

  @Transform(trimmed)
  @Matches(DEGREES, { message: 'Give the hottest air in °C, such as 36.' })
  hottestAirC!: string;

  @Transform(trimmed)
  @IsString()
  @MaxLength(300, { message: 'Shorten the guarantee to 300 letters.' })
  guaranteeWords = '';

  /** Nobody else is there to give the second name at a hold point. */
  @Ticked()
  isOnePerson?: 'on';

  @Matches(/^\d{1,9}$/, { message: 'Reload the page and change it again.' })
  version!: string;
}
