import { Transform, type TransformFnParams } from 'class-transformer';
import { ArrayMaxSize, ArrayMinSize, IsArray, IsIn, IsString, IsUUID, Length, Matches } from 'class-validator';
import { RETURN_REASONS, type ReturnReason } from '#libs/unit-life';
import { Ticked } from '../../../platform/ticked.decorator.ts';
import { trimmed } from '../../../platform/trimmed.ts';

const MONEY = /^\d{1,7}([.,]\d{1,2})?$/;
const MONEY_WORDS = { message: 'Give the net amount in figures, such as 23.40.' };
const EVIDENCE_WORDS = { message: 'Give who signed for it, or the tracking number.' };

export class ReturnDto {
  @IsIn(RETURN_REASONS, { message: 'Say why it goes back.' })
  reason: ReturnReason = 'not-needed';
}

export class WhyDto {
  @Transform(trimmed)
  @IsString({ message: 'Say why.' })
  @Length(1, 300, { message: 'Say why, 300 letters at most.' })
  why!: string;
}

export class HandOverDto {
  /** Signature of the driver, or a tracking number. */
  @Transform(trimmed)
  @IsString(EVIDENCE_WORDS)
  @Length(1, 120, EVIDENCE_WORDS)
  evidence!: string;
}

const listed = ({ value }: TransformFnParams): unknown => (typeof value === 'string' ? [value] : value);
const UNTICKED = { message: 'Tick what leaves.' };

/** Pieces that leave together, as a return note names them. */
export class LeavingDto {
  @Transform(listed)
  @IsArray(UNTICKED)
  @ArrayMinSize(1, UNTICKED)
  @ArrayMaxSize(200, { message: 'Hand over 200 pieces at most at a time.' })
  @IsUUID('all', { each: true, message: 'Tick what leaves.' })
  units!: string[];
}

/** Several pieces that leave together with one signature. */
export class HandOverTogetherDto extends LeavingDto {
  /** Signature of the driver, or a tracking number. */
  @Transform(trimmed)
  @IsString(EVIDENCE_WORDS)
  @Length(1, 120, EVIDENCE_WORDS)
  evidence!: string;
}

export class SaleDto {
  @Transform(trimmed)
  @IsString({ message: 'Give the document it was sold with.' })
  @Length(1, 120, { message: 'Give the document it was sold with.' })
  document!: string;
}

/** Money that was charged, credited or paid by the carrier, net. */
export class MoneyDto {
  @IsIn(['charged', 'credited', 'carrier-paid'], { message: 'Say what kind of money it is.' })
  kind!: 'charged' | 'credited' | 'carrier-paid';

  @Transform(trimmed)
  @Matches(MONEY, MONEY_WORDS)
  amount!: string;

  /** The document it stands on. */
  @Transform(trimmed)
  @IsString({ message: 'Give the number of the document.' })
  @Length(1, 120, { message: 'Give the number of the document, 120 letters at most.' })
  reference!: string;
}

export class OpenBoxDto {
  /** Said where opening costs the right of return. */
  @Ticked('Say that you mean to open it, or leave it shut.')
  sure?: 'on';
}

export class FindUnitDto {
  @Transform(trimmed)
  @IsString({ message: 'Type the code on the label.' })
  @Length(0, 20, { message: 'A code has six signs: read the label again.' })
  code!: string;
}
