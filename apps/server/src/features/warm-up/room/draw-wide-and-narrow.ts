import type { Drawing } from '#libs/charts';
import { drawLogs, type LogsToDraw } from '../proof/draw-logs.ts';

/** For the desk, for a tablet, for a phone: the style sheet shows one of the three. */
export interface DrawnLogs {
  wide: string;
  middle: string;
  narrow: string;
  title: string;
  table: Drawing['table'];
}

export function drawWideAndNarrow(logs: LogsToDraw, idPrefix: string): DrawnLogs {
  const draw = (suffix: string, widthPx: number): Drawing =>
    drawLogs(logs, { palette: 'page', idPrefix: `${idPrefix}-${suffix}`, widthPx });
  const wide = draw('w', 1010);
  return { wide: wide.svg, middle: draw('m', 760).svg, narrow: draw('n', 350).svg, title: wide.title, table: wide.table };
}
