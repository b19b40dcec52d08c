import { Transform } from 'class-transformer';
import { IsOptional, IsString, IsUUID, Length, Matches, MaxLength } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

export class TakeComplaintDto {
  /** In the customer's own words. */
  @Transform(trimmed)
  @IsString({ message: 'Write down what the customer says.' })
  @Length(1, 1000, { message: 'Write down what the customer says, 1,000 letters at most.' })
  complaint!: string;

  @Transform(trimmed)
  @IsString()
  @MaxLength(300, { message: 'Shorten when it happens to 300 letters.' })
  complaintWhen = '';

  @Matches(/^[a-z-]{1,60}$/, { message: 'Choose what is to be done.' })
  template!: string;

  /** The earlier job that did not hold. */
  @IsOptional()
  @Transform(({ value }: { value: unknown }) => (value === '' ? undefined : value))
  @IsUUID(undefined, { message: 'Choose the earlier job from the list.' })
  comebackOf?: string;
}
