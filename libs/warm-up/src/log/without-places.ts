import { findCells, newBounds, type CellBounds } from './cells.ts';
import { chooseColumns } from './choose-columns.ts';
import { LONG_NAME_WORDS } from './column-words.ts';
import { findHeader, isLongHeader, type Header } from './find-header.ts';
import { findLines, lineText, type Lines } from './lines.ts';
import { recogniseColumn } from './recognise-column.ts';

/**
 * A log's text without what it says about places, for keeping: where somebody lives is nobody's business. Cells under columns of
 * places are emptied, rows of such channels too, and so are the lines above the header, where loggers put anything; every line keeps
 * its number. The text reads as before.
 *
 * @param text The whole file
 * @returns The same table; the empty text where nothing looks like one
 * @example withoutPlaces('time_s,lat,coolant_c\n0,51.5,20') // 'time_s,lat,coolant_c\n0,,20'
 */
export function withoutPlaces(text: string): string {
  const lines = findLines(text.startsWith('\uFEFF') ? text.slice(1) : text);
  const header = findHeader(lines);
  if (!header) return '';
  const headers = header.cells.map((cell) => cell.trim());
  const blankLine = isLongHeader(headers) ? longRows(headers) : wideRows(headers);
  const bounds = newBounds();
  const separator = header.separator.charCodeAt(0);
  const kept: string[] = [];
  for (let line = 0; line < lines.count; line += 1) {
    if (line <= header.line) {
      kept.push(aboveRows(lines, line, header));
      continue;
    }
    findCells(lines, line, { separator, bounds });
    kept.push(blankLine(lines, line, bounds));
  }
  return kept.join('\n');
}

function aboveRows(lines: Lines, line: number, header: Header): string {
  return line === header.line ? lineText(lines, line) : '';
}

type BlankLine = (lines: Lines, line: number, bounds: CellBounds) => string;

/** One row per reading: a channel that is a place loses its rows. */
function longRows(headers: readonly string[]): BlankLine {
  const names = headers.flatMap((header, index) => (LONG_NAME_WORDS.test(header.toLowerCase()) ? [index] : []));
  const wide = wideRows(headers);
  return (lines, line, bounds) => {
    const isPlace = names.some((column) => recogniseColumn(lines.text.slice(bounds.starts[column], bounds.ends[column])).isLocation);
    return isPlace ? '' : wide(lines, line, bounds);
  };
}

/** A column each: cells under a place are emptied; a row with more cells than names can't be told apart and goes whole. */
function wideRows(headers: readonly string[]): BlankLine {
  const { recognised, byQuantity } = chooseColumns(headers, {});
  const used = new Set(Object.values(byQuantity));
  const places = new Set(recognised.flatMap(({ isLocation }, index) => (isLocation && !used.has(index) ? [index] : [])));
  if (places.size === 0) return (lines, line) => lineText(lines, line);
  return (lines, line, { starts, ends, count }) => {
    if (count > headers.length + 1) return '';
    let kept = '';
    let at = lines.starts[line] ?? 0;
    for (let cell = 0; cell < count; cell += 1) {
      const [from, to] = [starts[cell] ?? at, ends[cell] ?? at];
      kept += lines.text.slice(at, places.has(cell) ? from : to);
      at = to;
    }
    return kept + lines.text.slice(at, lines.ends[line]);
  };
}
