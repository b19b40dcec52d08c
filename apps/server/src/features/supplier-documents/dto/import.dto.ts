import { Transform } from 'class-transformer';
import { IsIn, IsUUID, Matches } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';
import { DAY_ORDERS, type DayOrder, ENCODINGS, type Encoding, type Separator } from '../csv/file-reading.types.ts';

export class UploadDto {
  @IsUUID('all', { message: 'Choose the supplier.' })
  supplierId!: string;

  @IsIn(['credit-lines', 'statement'], { message: 'Say what is in the file.' })
  kind!: 'credit-lines' | 'statement';
}

const COLUMN = /^$|^([0-9]|[1-5][0-9])$/;
const COLUMN_WORDS = { message: 'Choose a column of the file, or none.' };

/** Separators by name: a tab is lost in a form. */
export const SEPARATOR_NAMES: Readonly<Record<string, Separator>> = { comma: ',', semicolon: ';', tab: '\t', bar: '|' };

/** How the file is to be read; a column is its number from 0, empty for none. */
export class ReadingAsDto {
  @IsIn(ENCODINGS, { message: 'Choose how letters are written.' })
  encoding!: Encoding;

  @IsIn(Object.keys(SEPARATOR_NAMES), { message: 'Choose what parts the columns.' })
  separator!: string;

  @IsIn(['.', ','], { message: 'Choose what starts the decimals.' })
  decimalMark!: '.' | ',';

  @IsIn(DAY_ORDERS, { message: 'Choose how dates are written.' })
  dayOrder!: DayOrder;

  @Transform(trimmed)
  @Matches(/^\d{1,4}$/, { message: 'Give the line with the names of the columns, 0 if there is none.' })
  headLine!: string;

  @Matches(COLUMN, COLUMN_WORDS)
  number = '';

  @Matches(COLUMN, COLUMN_WORDS)
  date = '';

  @Matches(COLUMN, COLUMN_WORDS)
  reference = '';

  @Matches(COLUMN, COLUMN_WORDS)
  part = '';

  @Matches(COLUMN, COLUMN_WORDS)
  text = '';

  @Matches(COLUMN, COLUMN_WORDS)
  quantity = '';

  @Matches(COLUMN, COLUMN_WORDS)
  amount = '';

  @Matches(COLUMN, COLUMN_WORDS)
  debit = '';

  @Matches(COLUMN, COLUMN_WORDS)
  credit = '';
}
