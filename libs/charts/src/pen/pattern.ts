import { type Palette } from '../drawing.ts';
import { element } from './element.ts';
import { paintAttributes } from './paint.ts';
import { type Tone } from './tones.ts';

/** Grounds told apart by their lines, not by their colour. */
export type PatternName = 'too-hot' | 'late' | 'lost' | 'concentrate' | 'water' | 'mixed' | 'cut' | 'rubber' | 'waste';

interface PatternSpec {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly angle?: number;
  readonly lines: string;
  readonly linePx: number;
  readonly tone: Tone;
  readonly ground?: Tone;
}

const PATTERNS: Readonly<Record<PatternName, PatternSpec>> = {
  'too-hot': { widthPx: 7, heightPx: 7, angle: 45, lines: 'M0 0v7', linePx: 2, tone: 'hot' },
  late: { widthPx: 9, heightPx: 9, angle: 45, lines: 'M0 0v9', linePx: 0.9, tone: 'no' },
  lost: { widthPx: 6, heightPx: 6, angle: 45, lines: 'M0 0v6', linePx: 3, tone: 'no', ground: 'sheet' },
  concentrate: { widthPx: 8, heightPx: 8, angle: 45, lines: 'M0 0v8', linePx: 2.6, tone: 'ink', ground: 'sheet' },
  water: { widthPx: 22, heightPx: 18, lines: 'M2 5h11M13 14h9M0 14h2', linePx: 1.7, tone: 'ink', ground: 'sheet' },
  mixed: { widthPx: 16, heightPx: 16, angle: 45, lines: 'M0 0v16M8 1v7', linePx: 1.8, tone: 'ink', ground: 'sheet' },
  waste: { widthPx: 7, heightPx: 7, angle: 45, lines: 'M0 0v7M0 0h7', linePx: 1.6, tone: 'ink', ground: 'sheet' },
  cut: { widthPx: 6, heightPx: 6, angle: 45, lines: 'M0 0v6', linePx: 1.7, tone: 'ink', ground: 'sheet' },
  rubber: { widthPx: 3.4, heightPx: 3.4, lines: 'M0 0l3.4 3.4M3.4 0L0 3.4', linePx: 1.1, tone: 'ink', ground: 'sheet' },
};

/** Writes the definition of one pattern under the given id. */
export function patternDefinition(name: PatternName, { id, palette }: { id: string; palette: Palette }): string {
  const { widthPx, heightPx, angle, lines, linePx, tone, ground } = PATTERNS[name];
  const paper =
    ground === undefined ? '' : element('rect', { width: widthPx, height: heightPx, ...paintAttributes({ fill: ground }, palette) });
  return element(
    'pattern',
    {
      id,
      width: widthPx,
      height: heightPx,
      patternUnits: 'userSpaceOnUse',
      patternTransform: angle === undefined ? undefined : `rotate(${angle})`,
    },
    paper + element('path', { d: lines, ...paintAttributes({ stroke: tone, width: linePx }, palette) }),
  );
}
