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
    suppliers: suppliers.map((row) => {
      const own = units.filter(({ unit }) => unit.variant.supplier.id === row.supplierId);
      const terms = own[0]?.unit.variant.supplier;
      return {
        name: row.name,
        terms: terms ? termsText(terms, currency) : '',
        outText: moneyText(new Decimal(row.atSupplier).plus(row.onShelf).toFixed(2), currency),
        creditDays: terms?.daysToCredit ?? null,
        units: own.flatMap(tagOf),
      };
    }),
  };
}

function tagOf({ unit, open, sent, daysLeft }: ShelfUnit): ReturnTag[] {
  if (Number(open) <= 0) return [];
  const key = unit.job === null ? unit.label : unit.job.keyTag === null ? `job ${unit.job.number}` : `key ${unit.job.keyTag}`;
  if (unit.place === 'handed-over' && sent)
    return [{ side: 'sent', days: sent.days, amountText: amountText(open), note: `${key}, ${sent.days} d` }];
  if (daysLeft === null || (unit.place !== 'to-return' && unit.place !== 'set-aside')) return [];
  const when = daysLeft < 0 ? 'too late' : daysLeft === 0 ? 'today' : daysLeft === 1 ? 'tomorrow' : `in ${daysLeft} d`;
  return [{ side: 'shelf', days: daysLeft, amountText: amountText(open), note: `${key}, ${when}`, isUrgent: daysLeft <= URGENT_DAYS }];
}
