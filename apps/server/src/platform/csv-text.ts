/** A cell: text, or a figure that stands as it is. */
export type CsvCell = string | { figure: string };

const STARTS_FORMULA = /^[\s'"]*[=+\-@\t\r|%]/;
const IS_FIGURE = /^-?\d+(\.\d+)?$/;

function cellText(cell: CsvCell): string {
  if (typeof cell !== 'string') {
    if (!IS_FIGURE.test(cell.figure)) throw new Error(`"${cell.figure}" is no figure`);
    return cell.figure;
  }
  // A sheet would run such text as a formula; the apostrophe makes it text again.
  const safe = STARTS_FORMULA.test(cell) ? `'${cell}` : cell;
  return /[",;\r\n\t]/.test(safe) || safe !== safe.trim() ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * Rows as CSV (RFC 4180: comma, CRLF), in which no text of a person can become a formula of the sheet that opens it.
 *
 * @example csvText([['name', 'net'], ['=1+1', { figure: '-2.50' }]]) // "name,net\r\n'=1+1,-2.50\r\n"
 */
export function csvText(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}
