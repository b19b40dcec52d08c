import { Transform } from 'class-transformer';
import { IsIn, IsString, Length, MaxLength } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

const WHY_WORDS = { message: 'Say why, 300 letters at most.' };

export class AcceptDto {
  @IsIn(['whole', 'part', 'twice', 'same'], { message: 'Say what the line is.' })
  role!: 'whole' | 'part' | 'twice' | 'same';
}

export class ReasonDto {
  @Transform(trimmed)
  @IsString(WHY_WORDS)
  @Length(1, 300, WHY_WORDS)
  why!: string;
}

export class PieceCodeDto {
  @Transform(trimmed)
  @IsString({ message: 'Type the code on the label.' })
  @MaxLength(20, { message: 'A code has six signs: read the label again.' })
  code!: string;
}
