import { COLUMN_FIELDS, type FileReading } from './csv/file-reading.types.ts';
import { type ReadingAsDto, SEPARATOR_NAMES } from './dto/import.dto.ts';

/** What the form says of how a file is read. */
export function readingOf(input: ReadingAsDto): FileReading {
  const columns: FileReading['columns'] = {};
  for (const field of COLUMN_FIELDS) if (input[field] !== '') columns[field] = Number(input[field]);
  return {
    encoding: input.encoding,
    separator: SEPARATOR_NAMES[input.separator] ?? ',',
    decimalMark: input.decimalMark,
    dayOrder: input.dayOrder,
    headLine: Number(input.headLine),
    columns,
  };
}
