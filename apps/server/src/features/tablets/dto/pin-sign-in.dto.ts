import { IsOptional, IsString, IsUUID, Length } from 'class-validator';

/** A person at an enrolled tablet. */
export class PinSignInDto {
  @IsUUID('all', { message: 'Choose who you are.' })
  staffId!: string;

  /** 4 to 8 digits. */
  @IsString({ message: 'Type your PIN.' })
  @Length(1, 20, { message: 'Type your PIN.' })
  pin!: string;
}

/** The same as a form, with the page to go on to. */
export class PinFormDto extends PinSignInDto {
  @IsOptional()
  @IsString()
  back?: string;
}
