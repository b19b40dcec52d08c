import { Transform } from 'class-transformer';
import { IsEmail, IsIn, IsOptional, IsString, Length, Matches, MaxLength, ValidateIf } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

const isGiven = (_: unknown, value: unknown): boolean => value !== '' && value !== undefined;

/** A customer as the desk writes one down. */
export class CustomerDto {
  /** The name to call and to print. */
  @Transform(trimmed)
  @IsString({ message: 'Type the name.' })
  @Length(1, 120, { message: 'Type the name, 120 letters at most.' })
  name!: string;

  @IsIn(['person', 'business'], { message: 'Say whether this is a person or a business.' })
  kind: 'person' | 'business' = 'person';

  /** As it is dialled. */
  @Transform(trimmed)
  @Matches(/^$|^\+?[\d\s()/.-]{4,30}$/, { message: 'Type the phone number in digits, such as 0555 0142.' })
  phone = '';

  @Transform(trimmed)
  @ValidateIf((customer: CustomerDto) => isGiven(null, customer.email))
  @IsEmail({}, { message: 'This is no e-mail address: it needs an @ and a domain, such as name@example.org.' })
  @MaxLength(200, { message: 'Shorten the e-mail address to 200 letters.' })
  email = '';

  /** Street lines as they are printed, one to a line. */
  @Transform(trimmed)
  @IsString()
  @MaxLength(300, { message: 'Shorten the street to 300 letters.' })
  address = '';

  @Transform(trimmed)
  @IsString()
  @MaxLength(20, { message: 'Shorten the postcode to 20 letters.' })
  postcode = '';

  @Transform(trimmed)
  @IsString()
  @MaxLength(80, { message: 'Shorten the town to 80 letters.' })
  city = '';

  /** ISO 3166-1 alpha-2; empty: the workshop's own. */
  @Transform(trimmed)
  @Matches(/^$|^[A-Z]{2}$/, { message: 'Give the country as two capitals, such as IE, or leave it empty.' })
  country = '';

  @Transform(trimmed)
  @IsString()
  @MaxLength(30, { message: 'Shorten the VAT number to 30 letters.' })
  vatId = '';

  @Transform(trimmed)
  @IsString()
  @MaxLength(2000, { message: 'Shorten the note to 2,000 letters.' })
  note = '';

  /** The version that was read, so that nobody's change is written over. */
  @IsOptional()
  @Matches(/^\d{1,9}$/, { message: 'Reload the page and change it again.' })
  version?: string;
}
