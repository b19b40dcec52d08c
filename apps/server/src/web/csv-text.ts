const PLAIN_NUMBER = /^-?\d+(\.\d+)?$/;

/**
 * Rows as CSV for a spreadsheet, which takes a cell that begins with = + - @ for a formula: such a cell is led by an apostrophe.
 * Plain numbers stay numbers.
 *
 * @example csvText([['name', 'open'], ['=1+1', '-4.50']]) // "\ufeffname,open\r\n'=1+1,-4.50\r\n"
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  const lines = rows.map((row) => row.map(cellText).join(','));
  return `\ufeff${lines.join('\r\n')}\r\n`;
}

function cellText(cell: string): string {
  const isRisky = /^[=+\-@\t\r]/.test(cell) && !PLAIN_NUMBER.test(cell);
  const safe = isRisky ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
