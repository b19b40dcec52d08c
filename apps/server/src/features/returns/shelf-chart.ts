import { type Drawing, type DrawingOptions, returnsTimeline, type ReturnsTimelineData, type ReturnTag } from '#libs/charts';
import { Decimal } from '#libs/money';
import { DateTime } from 'luxon';
import { amountText, moneyText } from '../../web/money-text.ts';
import { termsText } from '../../web/terms-text.ts';
import type { Shelf, ShelfUnit } from './shelf.service.ts';

/** A last day so near gets the lamp. */
const URGENT_DAYS = 3;

export interface DrawnShelf {
  wide: string;
  middle: string;
  narrow: string;
  table: Drawing['table'];
}

/** The shelf for the desk, for a tablet and for a phone: the style sheet shows one of the three. */
export function drawShelf(shelf: Shelf): DrawnShelf {
  const data = timelineData(shelf);
  const draw = (idPrefix: string, widthPx: number): Drawing =>
    returnsTimeline(data, { palette: 'page', idPrefix, widthPx } satisfies DrawingOptions);
  const wide = draw('shelf-w', 1376);
  return { wide: wide.svg, middle: draw('shelf-m', 944).svg, narrow: draw('shelf-n', 350).svg, table: wide.table };
}

function timelineData({ units, suppliers, now, timeZone, currency }: Shelf): ReturnsTimelineData {
  return {
    todayText: DateTime.fromJSDate(now, { zone: timeZone }).setLocale('en-GB').toFormat('ccc d'),
    suppliers: suppliers.flatMap((row) => {
      const own = units.filter(({ unit }) => unit.variant.supplier.id === row.supplierId);
      const terms = own[0]?.unit.variant.supplier;
      if (!terms) return [];
      return [
        {
          name: row.supplier,
          terms: termsText(terms, currency),
          outText: moneyText(sumOf(own.filter((unit) => tagOf(unit).length > 0)), currency),
          creditDays: terms.daysToCredit,
          units: own.flatMap(tagOf),
        },
      ];
    }),
  };
}

const sumOf = (units: readonly ShelfUnit[]): string => units.reduce((sum, { open }) => sum.plus(open), new Decimal(0)).toFixed(2);

/** What is only set aside while its job is decided has no business on the line yet. */
function tagOf({ unit, open, sent, daysLeft, isDue }: ShelfUnit): ReturnTag[] {
  if (Number(open) <= 0) return [];
  const whose = unit.whose === '' ? unit.label : unit.whose;
  const amount = amountText(open);
  if (unit.place === 'handed-over' && sent) return [{ side: 'sent', days: sent.days, amountText: amount, note: whose }];
  if (daysLeft === null || !(unit.place === 'to-return' || (unit.place === 'set-aside' && isDue))) return [];
  return [{ side: 'shelf', days: daysLeft, amountText: amount, note: noteOf(whose, daysLeft), isUrgent: daysLeft <= URGENT_DAYS }];
}

/** The line itself says how late something is. */
function noteOf(whose: string, daysLeft: number): string {
  if (daysLeft < 0) return whose;
  if (daysLeft === 0) return `${whose}, today`;
  return daysLeft === 1 ? `${whose}, tomorrow` : `${whose}, in ${daysLeft} d`;
}
