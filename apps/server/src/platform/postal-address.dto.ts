import { Transform } from 'class-transformer';
import { IsString, MaxLength } from 'class-validator';
import { trimmed } from './trimmed.ts';

export class PostalAddressDto {
  /** Street lines as they are printed, one to a line. */
  @Transform(trimmed)
  @IsString()
  @MaxLength(300, { message: 'Shorten the street to 300 letters.' })
  address: string = '';

  @Transform(trimmed)
  @IsString()
  @MaxLength(20, { message: 'Shorten the postcode to 20 letters.' })
  postcode: string = '';

  @Transform(trimmed)
  @IsString()
  @MaxLength(80, { message: 'Shorten the town to 80 letters.' })
  city: string = '';
}
