import { ChartInputError } from './chart-input-error.ts';
import { checkInput } from './check-input.ts';
import { checkNotNegative } from './check-not-negative.ts';
import { type Drawing, type DrawingOptions } from './drawing.ts';
import { jugFigures, jugMarks } from './jug/jug-marks.ts';
import { JUG, jugShape, type JugShape } from './jug/jug-shape.ts';
import { lampPlate, plateBox } from './marks/plate.ts';
import { coordinate } from './pen/element.ts';
import { finishDrawing } from './pen/finish-drawing.ts';
import { createPen, type Pen } from './pen/pen.ts';
import { formatVolume } from './text/format-volume.ts';

/** What is in a jug; its hatch says so as well as its name: diagonal, dashes, long and short diagonals. */
export type JugLiquid = 'concentrate' | 'water' | 'mixed';

/** One jug to pour. */
export interface JugToPour {
  readonly liquid: JugLiquid;
  readonly amountMl: number;
  /** A poured jug is empty and carries a tick instead of a lamp plate. */
  readonly isPoured?: boolean;
  /** Stands below the jug instead of the liquid's plain name. */
  readonly name?: string;
}

/** Jugs of one size, in the order of pouring. */
export interface JugsData {
  readonly jugMl: number;
  /** From one mark of the jug to the next. */
  readonly markMl: number;
  readonly jugs: readonly JugToPour[];
}

const LIQUID_NAMES: Readonly<Record<JugLiquid, string>> = { concentrate: 'concentrate', water: 'water', mixed: 'ready-mixed' };
const FIGURES_PX = 62;
const PITCH_PX = 128;
const ROW_PX = JUG.rimPx + JUG.scalePx + 40;

const check = ({ jugMl, markMl, jugs: poured }: JugsData): void => {
  if (jugMl < 1) throw new ChartInputError('out-of-range', 'jugMl', 'A jug holds at least 1 mL: enter its size.');
  if (markMl < 0.01)
    throw new ChartInputError('out-of-range', 'markMl', 'Marks lie at least 0.01 mL apart: enter the distance from one mark to the next.');
  poured.forEach(({ amountMl }, index) => {
    const field = `jugs.${index}.amountMl`;
    checkNotNegative(amountMl, field);
    if (amountMl > jugMl) {
      throw new ChartInputError('out-of-range', field, `A jug of ${jugMl} mL can't hold ${amountMl} mL: split it into more jugs.`);
    }
  });
};

const amountText = (jug: JugToPour, jugMl: number): string => (jug.amountMl === jugMl ? 'full' : formatVolume(jug.amountMl / 1000));

const nameOf = (jug: JugToPour): string => jug.name ?? LIQUID_NAMES[jug.liquid];

const outline = (pen: Pen, shape: JugShape): string =>
  pen.path(shape.handle, { stroke: 'ink', width: 3.2 }) + pen.path(shape.wall, { stroke: 'ink', width: 3.2 });

const toPour = (pen: Pen, shape: JugShape, { jug, jugMl, share }: { jug: JugToPour; jugMl: number; share: number }): string => {
  const y = shape.yAt(share);
  const type = { sizePx: 16, face: 'sign', weight: 800 } as const;
  const isDeep = share * JUG.scalePx > 44;
  const free = plateBox(amountText(jug, jugMl), { ...type, x: 0, y: isDeep ? y + 24 : y - 22 });
  const box = { ...free, x: shape.rightAt(share) - 4 - free.width };
  return (
    pen.polyline(shape.inside(share), { fill: 'sheet' }) +
    pen.part('level', pen.polyline(shape.liquid(share), { pattern: pen.id(jug.liquid) })) +
    pen.path(`M${coordinate(shape.leftAt(share) - 10)} ${coordinate(y)}H${coordinate(shape.rightAt(share))}`, { stroke: 'ink', width: 4 }) +
    lampPlate(pen, amountText(jug, jugMl), { ...type, box })
  );
};

const poured = (pen: Pen, shape: JugShape, { jug, share }: { jug: JugToPour; share: number }): string => {
  const middle = (shape.leftAt(0) + JUG.stripPx + shape.rightAt(0)) / 2 - 2;
  const y = shape.yAt(0.42);
  const text = { x: middle, sizePx: 14, weight: 600, anchor: 'middle' } as const;
  return (
    pen.path(`M${coordinate(shape.leftAt(share) - 10)} ${coordinate(shape.yAt(share))}H${coordinate(shape.leftAt(share) + JUG.stripPx)}`, {
      stroke: 'ink',
      width: 4,
    }) +
    pen.path(`M${coordinate(middle - 11)} ${coordinate(y - 34)}l8 8l14 -17`, { stroke: 'ink', width: 3.6 }) +
    pen.text(formatVolume(jug.amountMl / 1000), { ...text, y }) +
    pen.text('poured', { ...text, y: y + 18 })
  );
};

const example = (pen: Pen): { body: string; heightPx: number } => {
  const shape = jugShape({ x: FIGURES_PX, baseY: JUG.rimPx + JUG.scalePx + 4 });
  const dashed = { stroke: 'edge', dash: 'assumed' } as const;
  const level = `M${coordinate(shape.leftAt(0.6))} ${coordinate(shape.yAt(0.6))}H${coordinate(shape.rightAt(0.6))}`;
  const words = { x: FIGURES_PX + JUG.bodyPx + JUG.handlePx + 12, sizePx: 15, tone: 'ink2' } as const;
  return {
    body: pen.part(
      'example',
      [shape.handle, shape.wall, level].map((d) => pen.path(d, dashed)).join('') +
        pen.text('nothing to', { ...words, y: shape.yAt(0.6) }) +
        pen.text('pour yet', { ...words, y: shape.yAt(0.6) + 20 }),
    ),
    heightPx: ROW_PX,
  };
};

const drawAll = (pen: Pen, data: JugsData, widthPx: number): { body: string; heightPx: number } => {
  const perRow = Math.max(1, Math.floor((widthPx - FIGURES_PX) / PITCH_PX));
  const body = data.jugs.map((jug, index) => {
    const [row, column] = [Math.floor(index / perRow), index % perRow];
    const shape = jugShape({ x: FIGURES_PX + column * PITCH_PX, baseY: row * ROW_PX + JUG.rimPx + JUG.scalePx + 4 });
    const share = jug.amountMl / data.jugMl;
    return (
      (jug.isPoured === true ? poured(pen, shape, { jug, share }) : toPour(pen, shape, { jug, jugMl: data.jugMl, share })) +
      jugMarks(pen, shape, data) +
      outline(pen, shape) +
      (column === 0 ? jugFigures(pen, shape, data.jugMl) : '') +
      pen.text(nameOf(jug), { x: shape.leftAt(0) + JUG.bodyPx / 2, y: shape.yAt(0) + 22, sizePx: 15, weight: 600, anchor: 'middle' })
    );
  });
  return { body: body.join(''), heightPx: Math.ceil(data.jugs.length / perRow) * ROW_PX };
};

/**
 * Draws the jugs to pour with their marks and fill lines, as many to a row as fit. Levels are linear in the volume.
 *
 * @throws ChartInputError when a jug has no size, an amount is below zero or more than a jug holds.
 * @example jugs({ jugMl: 1000, markMl: 50, jugs: [{ liquid: 'water', amountMl: 350 }] }, { palette: 'page', idPrefix: 'w', widthPx: 318 }).title
 * // 'Jugs to pour: 1 of 1 L'
 */
export function jugs(data: JugsData, options: DrawingOptions): Drawing {
  checkInput(data, options);
  check(data);
  const pen = createPen(options);
  const { body, heightPx } = data.jugs.length === 0 ? example(pen) : drawAll(pen, data, options.widthPx);
  const liquids = [...new Set(data.jugs.map(({ liquid }) => liquid))];
  const rows = data.jugs.map((jug, index) => [
    String(index + 1),
    nameOf(jug),
    formatVolume(jug.amountMl / 1000),
    jug.isPoured === true ? 'poured' : 'to pour',
  ]);
  return finishDrawing(
    {
      title: data.jugs.length === 0 ? 'Jugs to pour: none yet' : `Jugs to pour: ${data.jugs.length} of ${formatVolume(data.jugMl / 1000)}`,
      description: data.jugs.length === 0 ? 'A dashed example of a jug.' : rows.map((row) => row.slice(1).join(', ')).join('; '),
      table: {
        caption: `Jugs of ${formatVolume(data.jugMl / 1000)}, marks every ${formatVolume(data.markMl / 1000)}`,
        head: ['jug', 'liquid', 'amount', 'state'],
        rows,
      },
      heightPx,
      body: (liquids.length === 0 ? '' : pen.patterns(liquids)) + body,
    },
    options,
  );
}
