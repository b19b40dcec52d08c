import { Transform } from 'class-transformer';
import { IsOptional, IsString, Length, MaxLength } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

export class SignInDto {
  /** The name given at the door. */
  @Transform(trimmed)
  @IsString({ message: 'Type your name.' })
  @Length(1, 80, { message: 'Type your name, 80 letters at most.' })
  name!: string;

  /** The person's secret. */
  @IsString({ message: 'Type your secret.' })
  @Length(1, 200, { message: 'Type your secret, 200 letters at most.' })
  secret!: string;

  /** Where to go then: a path of this service. */
  @IsOptional()
  @IsString()
  @MaxLength(500)
  back?: string;
}
