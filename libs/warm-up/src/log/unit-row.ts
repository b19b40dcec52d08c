import { splitCells } from './cells.ts';
import { type Chosen } from './choose-columns.ts';
import { type Header } from './find-header.ts';
import { type Lines } from './lines.ts';
import { QUANTITIES } from './quantity.ts';
import { readUnit } from './read-unit.ts';

/** The line below the header when it holds units instead of readings; null when it doesn't. */
export function unitRowAfter(lines: Lines, header: Header, chosen: Chosen): string[] | null {
  const cells = splitCells(lines, header.line + 1, header);
  const columns = QUANTITIES.flatMap((quantity) => chosen.byQuantity[quantity] ?? []);
  if (columns.length === 0 || columns.some((column) => /^\s*[+-]?\d/.test(cells[column] ?? ''))) return null;
  const hasUnit = QUANTITIES.some((quantity) => {
    const column = chosen.byQuantity[quantity];
    return column !== undefined && readUnit(cells[column] ?? '', quantity) !== null;
  });
  return hasUnit ? cells : null;
}
