import { Transform } from 'class-transformer';
import { IsEmail, IsIn, IsOptional, IsString, Length, Matches, MaxLength, ValidateIf } from 'class-validator';
import { PostalAddressDto } from '../../../platform/postal-address.dto.ts';
import { trimmed } from '../../../platform/trimmed.ts';

const isGiven = (_: unknown, value: unknown): boolean => value !== '' && value !== undefined;

/** A customer as the desk writes one down. */
export class CustomerDto extends PostalAddressDto {
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
  phone: string = '';

  @Transform(trimmed)
  @ValidateIf((customer: CustomerDto) => isGiven(null, customer.email))
  @IsEmail({}, { message: 'This is no e-mail address: it needs an @ and a domain, such as name@example.org.' })
  @MaxLength(200, { message: 'Shorten the e-mail address to 200 letters.' })
  email: string = '';

  /** ISO 3166-1 alpha-2; empty: the workshop's own. */
  @Transform(trimmed)
  @Matches(/^$|^[A-Z]{2}$/, { message: 'Give the country as two capitals, such as IE, or leave it empty.' })
  country: string = '';

  @Transform(trimmed)
  @IsString()
  @MaxLength(30, { message: 'Shorten the VAT number to 30 letters.' })
  vatId: string = '';

  @Transform(trimmed)
  @IsString()
  @MaxLength(2000, { message: 'Shorten the note to 2,000 letters.' })
  note: string = '';

  /** The version that was read, so that nobody's change is written over. */
  @IsOptional()
  @Matches(/^\d{1,9}$/, { message: 'Reload the page and change it again.' })
  version?: string;
}
