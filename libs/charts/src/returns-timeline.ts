import { checkInput } from './check-input.ts';
import { checkNotNegative } from './check-not-negative.ts';
import { type Drawing, type DrawingOptions } from './drawing.ts';
import { coordinate } from './pen/element.ts';
import { finishDrawing } from './pen/finish-drawing.ts';
import { createPen, type Pen } from './pen/pen.ts';
import { drawTag, LANE_PX, placeTags, type PlacedTag } from './returns/return-tags.ts';
import { type ReturnsSupplier, type ReturnsTimelineData } from './returns/returns-data.ts';
import { returnsFrame, type ReturnsFrame } from './returns/returns-frame.ts';
import { HEAD_PX, returnsHead, todayLine, todayPlate } from './returns/returns-head.ts';
import { formatFigure } from './text/format-figure.ts';
import { textWidth } from './text/text-width.ts';
import { wrapText } from './text/wrap-text.ts';

const NAME = { sizePx: 20, face: 'sign', weight: 800 } as const;
const NAME_LINE_PX = 24;
const TERMS_PX = 14;
const TERMS_LINE_PX = 18;
const ZONE_WORD_PX = 34;
const LEAST_ROW_PX = 96;

interface Row {
  readonly supplier: ReturnsSupplier;
  readonly tags: readonly PlacedTag[];
  readonly names: readonly string[];
  readonly terms: readonly string[];
  /** Height of the labels when they stand above the tags. */
  readonly labelPx: number;
  readonly heightPx: number;
}

const labelRoom = (frame: ReturnsFrame): number => (frame.isNarrow ? frame.right : frame.left - 18);

const rowOf = (supplier: ReturnsSupplier, frame: ReturnsFrame): Row => {
  const tags = placeTags(supplier, frame);
  const terms = wrapText(supplier.terms, { sizePx: TERMS_PX, maxWidthPx: labelRoom(frame), maxLines: 3 });
  const names = wrapText(supplier.name, { ...NAME, maxWidthPx: labelRoom(frame) - textWidth(supplier.outText, NAME) - 12, maxLines: 2 });
  const lanes = Math.max(1, ...tags.map(({ lane }) => lane + 1));
  const labelPx = 8 + names.length * NAME_LINE_PX + terms.length * TERMS_LINE_PX + 4;
  const tagsPx = ZONE_WORD_PX + lanes * LANE_PX + 4;
  return {
    supplier,
    tags,
    names,
    terms,
    labelPx,
    heightPx: frame.isNarrow ? labelPx + tagsPx : Math.max(LEAST_ROW_PX, labelPx + 6, tagsPx),
  };
};

const labels = (pen: Pen, { supplier, names, terms }: Row, { frame, y }: { frame: ReturnsFrame; y: number }): string => {
  const end = labelRoom(frame);
  const termsY = y + 18 + names.length * NAME_LINE_PX;
  return (
    names.map((line, index) => pen.text(line, { ...NAME, x: 0, y: y + 24 + index * NAME_LINE_PX })).join('') +
    pen.text(supplier.outText, { ...NAME, x: end, y: y + 24, anchor: 'end' }) +
    terms.map((line, index) => pen.text(line, { x: 0, y: termsY + index * TERMS_LINE_PX, sizePx: TERMS_PX, tone: 'ink2' })).join('')
  );
};

const lateZone = (
  pen: Pen,
  { creditDays }: ReturnsSupplier,
  { frame, y, heightPx }: { frame: ReturnsFrame; y: number; heightPx: number },
): string => {
  if (creditDays === null) return '';
  const x = frame.agoX(creditDays);
  const word = `past ${formatFigure(creditDays, { decimals: 0 })} days`;
  const type = { sizePx: TERMS_PX, weight: 700, tone: 'no', y: y + 16, halo: pen.ground } as const;
  const isLeft = textWidth(word, type) + 12 < x - frame.left;
  return (
    pen.part('late-zone', pen.rect({ x: frame.left, y, width: x - frame.left, height: heightPx }, { pattern: pen.id('late') })) +
    pen.path(`M${coordinate(x)} ${coordinate(y)}v${coordinate(heightPx)}`, { stroke: 'no', dash: 'limit' }) +
    pen.text(word, isLeft ? { ...type, x: x - 8, anchor: 'end' } : { ...type, x: x + 8 })
  );
};

const drawRow = (pen: Pen, row: Row, { frame, y }: { frame: ReturnsFrame; y: number }): { lines: string; tags: string } => {
  const tagsY = frame.isNarrow ? y + row.labelPx : y;
  const zone = { frame, y: tagsY, heightPx: y + row.heightPx - tagsY };
  return {
    lines:
      labels(pen, row, { frame, y }) +
      lateZone(pen, row.supplier, zone) +
      pen.path(`M0 ${coordinate(y + row.heightPx)}H${coordinate(frame.right)}`, { stroke: 'line', width: 'hair' }),
    tags:
      todayLine(pen, frame, { fromY: tagsY, toY: y + row.heightPx }) +
      row.tags.map((tag) => drawTag(pen, tag, tagsY + ZONE_WORD_PX)).join(''),
  };
};

const example = (pen: Pen, frame: ReturnsFrame): string => {
  const y = HEAD_PX + 30;
  const dashed = { stroke: 'edge', dash: 'assumed' } as const;
  const sentX = frame.agoX(frame.daysBack * 0.25);
  const shelfX = frame.aheadX(frame.daysAhead * 0.3);
  const words = { sizePx: 14, tone: 'ink2', y: y + 56 } as const;
  const label = frame.isNarrow ? '' : pen.text('no supplier yet', { ...words, x: 0, y: y + 24 });
  return pen.part(
    'example',
    label +
      pen.path(`M${coordinate(sentX)} ${y + 19}l-12 -19h-62v38h62z`, dashed) +
      pen.path(`M${coordinate(shelfX)} ${y + 19}l12 -19h62v38h-62z`, dashed) +
      pen.text('sent, unpaid', { ...words, x: sentX, anchor: 'end' }) +
      pen.text('must leave', { ...words, x: shelfX }),
  );
};

/**
 * Draws one row a supplier: left of today what was sent back and is not paid, right of it what must still leave, every unit a tag whose
 * nose stands on its day. Beyond the supplier's credit term the row is hatched. Tags that would touch take another lane.
 *
 * @throws ChartInputError when a figure is not finite, or a sent unit left less than no days ago.
 */
export function returnsTimeline(data: ReturnsTimelineData, options: DrawingOptions): Drawing {
  checkInput(data, options);
  data.suppliers.forEach(({ units, creditDays }, row) => {
    if (creditDays !== null) checkNotNegative(creditDays, `suppliers.${row}.creditDays`);
    units.forEach(({ side, days }, index) => {
      if (side === 'sent') checkNotNegative(days, `suppliers.${row}.units.${index}.days`);
    });
  });
  const pen = createPen(options);
  const frame = returnsFrame(data, options.widthPx);
  const rows = data.suppliers.map((supplier) => rowOf(supplier, frame));
  const tops = rows.map((_, index) => HEAD_PX + rows.slice(0, index).reduce((sum, { heightPx }) => sum + heightPx, 0));
  const bottomY = rows.length === 0 ? HEAD_PX + 100 : HEAD_PX + rows.reduce((sum, { heightPx }) => sum + heightPx, 0);
  const drawn = rows.map((row, index) => drawRow(pen, row, { frame, y: tops[index] ?? 0 }));
  const body =
    pen.patterns(['late']) +
    returnsHead(pen, frame, data.todayText) +
    drawn.map(({ lines }) => lines).join('') +
    (rows.length === 0 ? todayLine(pen, frame, { fromY: HEAD_PX, toY: bottomY }) : '') +
    drawn.map(({ tags }) => tags).join('') +
    todayPlate(pen, frame, data.todayText) +
    (rows.length === 0 ? example(pen, frame) : '');
  const unitRows = rows.flatMap(({ supplier, tags }) =>
    tags.map(({ tag, note }) => [
      supplier.name,
      tag.side === 'sent' ? 'sent back' : 'on our shelf',
      tag.amountText,
      note,
      tag.isUrgent === true ? 'soon' : '',
    ]),
  );
  return finishDrawing(
    {
      title: rows.length === 0 ? 'Returns: nothing out, an example is drawn dashed' : `Returns on ${data.todayText}`,
      description: rows
        .map(
          ({ supplier, tags }) =>
            `${supplier.name}: ${supplier.outText} out, ${tags.length} units, ${tags.filter(({ isLate }) => isLate).length} late`,
        )
        .join('; '),
      table: { caption: 'Units on their way back', head: ['supplier', 'where', 'amount', 'when', 'mark'], rows: unitRows },
      heightPx: bottomY + 4,
      body,
    },
    options,
  );
}
