import { checkInput } from './check-input.ts';
import { type DataTable, type Drawing, type DrawingOptions } from './drawing.ts';
import { columnsFit, moneyColumns, moneyKey } from './money/money-columns.ts';
import { type MoneyBarsData } from './money/money-data.ts';
import { moneyRows } from './money/money-rows.ts';
import { finishDrawing } from './pen/finish-drawing.ts';
import { createPen, type Pen } from './pen/pen.ts';

const KEY_PX = 28;

const example = (pen: Pen, words: string): { body: string; heightPx: number } => {
  const lengths = [150, 90, 200];
  const bars = lengths.map((width, index) => pen.rect({ x: 2, y: 8 + index * 26, width, height: 16 }, { stroke: 'edge', dash: 'assumed' }));
  return {
    body:
      pen.part('example', bars.join('') + pen.text(words, { x: 2, y: 108, sizePx: 15, tone: 'ink2' })) +
      pen.path('M2 2V86', { stroke: 'ink' }),
    heightPx: 118,
  };
};

const drawBars = (pen: Pen, data: MoneyBarsData, widthPx: number): { body: string; heightPx: number } => {
  if (data.form === 'by-age') {
    if (data.ages.length === 0) return example(pen, 'no money is out');
    const rows = data.ages.map(({ label, out, isLate }) => ({
      label,
      bars: [
        {
          name: isLate === true ? ('late' as const) : ('out' as const),
          value: isLate === true ? { ...out, text: `${out.text} late` } : out,
        },
      ],
    }));
    return moneyRows(pen, rows, { widthPx, topY: 2 });
  }
  if (data.months.length === 0) return example(pen, 'nothing came back or was lost yet');
  if (columnsFit(data.months, widthPx)) return moneyColumns(pen, data.months, widthPx);
  const rows = data.months.map(({ label, recovered, lost }) => ({
    label,
    bars: [
      { name: 'recovered' as const, value: recovered },
      { name: 'lost' as const, value: lost },
    ],
  }));
  const drawn = moneyRows(pen, rows, { widthPx, topY: KEY_PX });
  return { ...drawn, body: moneyKey(pen) + drawn.body };
};

const tableOf = (data: MoneyBarsData): DataTable =>
  data.form === 'by-month'
    ? {
        caption: 'Recovered and lost by month',
        head: ['month', 'recovered', 'lost'],
        rows: data.months.map(({ label, recovered, lost }) => [label, recovered.text, lost.text]),
      }
    : {
        caption: 'Money out at suppliers, by age',
        head: ['age', 'out', 'mark'],
        rows: data.ages.map(({ label, out, isLate }) => [label, out.text, isLate === true ? 'late' : '']),
      };

/**
 * Draws plain bars of money with their values written: by month what was recovered (full, upwards) and lost (hatched, downwards), or by
 * age what is still out. Lengths are in proportion to the amounts. Where columns have no room for their values, rows are drawn.
 *
 * @throws ChartInputError when an amount is not finite.
 */
export function moneyBars(data: MoneyBarsData, options: DrawingOptions): Drawing {
  checkInput(data, options);
  const pen = createPen(options);
  const { body, heightPx } = drawBars(pen, data, options.widthPx);
  const table = tableOf(data);
  return finishDrawing(
    {
      title: table.rows.length === 0 ? `${table.caption}: nothing yet` : table.caption,
      description: table.rows.map((row) => row.filter((cell) => cell !== '').join(' ')).join('; '),
      table,
      heightPx: heightPx + 4,
      body: pen.patterns(['lost']) + body,
    },
    options,
  );
}
