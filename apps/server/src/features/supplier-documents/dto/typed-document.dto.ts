import { Transform, type TransformFnParams } from 'class-transformer';
import { ArrayMaxSize, IsArray, IsString, IsUUID, Length, Matches } from 'class-validator';
import { cleanText } from '../../../platform/clean-text.ts';
import { trimmed } from '../../../platform/trimmed.ts';

/** A column of the form's rows: one row is sent as a text, several as a list. */
function column({ value }: TransformFnParams): unknown {
  const list: unknown[] = Array.isArray(value) ? value : value === undefined ? [] : [value];
  return list.map((item) => (typeof item === 'string' ? cleanText(item).trim().slice(0, 200) : item));
}

const TOO_MANY = { message: 'That is too many lines for a form: import them from a file.' };
const TEXTS = { each: true, message: 'Send texts.' };

/** A purchase invoice or a credit note as it is typed from paper; rows that are empty throughout are left out. */
export class TypedDocumentDto {
  @IsUUID('all', { message: 'Choose the supplier.' })
  supplierId!: string;

  @Transform(trimmed)
  @IsString({ message: 'Type the number on the paper.' })
  @Length(1, 60, { message: 'Type the number on the paper, 60 letters at most.' })
  number!: string;

  @Transform(trimmed)
  @Matches(/^\d{4}-\d{2}-\d{2}$/, { message: 'Choose the day on the paper.' })
  datedOn!: string;

  /** Total with tax, as a statement will name it. */
  @Transform(trimmed)
  @IsString({ message: 'Give the total with tax, or leave it empty.' })
  gross = '';

  @Transform(column)
  @IsArray()
  @ArrayMaxSize(40, TOO_MANY)
  @IsString(TEXTS)
  reference: string[] = [];

  @Transform(column)
  @IsArray()
  @ArrayMaxSize(40, TOO_MANY)
  @IsString(TEXTS)
  part: string[] = [];

  @Transform(column)
  @IsArray()
  @ArrayMaxSize(40, TOO_MANY)
  @IsString(TEXTS)
  text: string[] = [];

  @Transform(column)
  @IsArray()
  @ArrayMaxSize(40, TOO_MANY)
  @IsString(TEXTS)
  quantity: string[] = [];

  /** Net of the whole line. */
  @Transform(column)
  @IsArray()
  @ArrayMaxSize(40, TOO_MANY)
  @IsString(TEXTS)
  amount: string[] = [];
}
