import { type Box, type Pen, type TextSpec } from '../pen/pen.ts';
import { sharedArea, textBox } from '../placing/boxes.ts';
import { chooseSpot } from '../placing/choose-spot.ts';
import { formatFigure } from '../text/format-figure.ts';
import { type CoolingReading } from './cooling-data.ts';
import { type CoolingFrame } from './cooling-frame.ts';

/** Texts written so far and the room they take. */
export interface Written {
  readonly markup: string;
  readonly texts: readonly Box[];
}

/** A text with one place it could stand at. */
export interface Candidate {
  readonly content: string;
  readonly spec: TextSpec;
}

interface WordSpec {
  readonly candidates: readonly Candidate[];
  readonly lines: readonly Box[];
  readonly frame: CoolingFrame;
}

/** Writes a text at the best of its places; where all of them would cover another text it is left to the table. */
export function addWord(pen: Pen, written: Written, { candidates, lines, frame }: WordSpec): Written {
  const bounds: Box = { x: frame.left + 3, y: frame.top - 4, width: frame.right - frame.left + 16, height: frame.bottom - frame.top + 2 };
  const boxes = candidates.map(({ content, spec }) => textBox(content, spec));
  const spot = chooseSpot(boxes, { bounds, lines, texts: written.texts });
  const [chosen, box] = [candidates[spot], boxes[spot]];
  if (chosen === undefined || box === undefined || written.texts.some((other) => sharedArea(box, other) > 0)) return written;
  return { markup: written.markup + pen.text(chosen.content, { ...chosen.spec, halo: pen.ground }), texts: [...written.texts, box] };
}

const MOST_FIGURES = 12;

/** The readings' figures beside their rings, the newest first. */
export function addFigures(
  pen: Pen,
  written: Written,
  { readings, lines, frame }: { readings: readonly CoolingReading[]; lines: readonly Box[]; frame: CoolingFrame },
): Written {
  const newest = readings.slice(-MOST_FIGURES).reverse();
  return newest.reduce((soFar, { clockMin, tempC }) => {
    const [x, y] = [frame.xOf(clockMin), frame.yOf(tempC)];
    const type = { sizePx: 15, weight: 700 } as const;
    const specs: readonly TextSpec[] = [
      { ...type, x, y: y - 12, anchor: 'middle' },
      { ...type, x: x + 10, y: y - 9 },
      { ...type, x, y: y + 24, anchor: 'middle' },
      { ...type, x: x - 10, y: y + 20, anchor: 'end' },
      { ...type, x: x - 10, y: y - 8, anchor: 'end' },
      { ...type, x: x + 10, y: y + 20 },
    ];
    return addWord(pen, soFar, { candidates: specs.map((spec) => ({ content: formatFigure(tempC), spec })), lines, frame });
  }, written);
}
