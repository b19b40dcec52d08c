import { Transform } from 'class-transformer';
import { IsString, Length } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

export class WithdrawLogDto {
  @Transform(trimmed)
  @IsString({ message: 'Say why it doesn’t count.' })
  @Length(1, 300, { message: 'Say why it doesn’t count, 300 letters at most.' })
  why!: string;
}
