import { type Drawing, moneyBars } from '#libs/charts';
import { Decimal, sumAmounts } from '#libs/money';
import { AGE_BANDS, type AgeBand, UNIT_PLACE_WORDS, type UnitPlace } from '#libs/unit-life';
import { DateTime } from 'luxon';
import { plainDate } from '../../web/dates.ts';
import { amountText, moneyText } from '../../web/money-text.ts';
import { unitCodeText } from '../returns/units.service.ts';
import { urls } from '../../web/urls.ts';
import type { CostRow, UnitRow } from './money.repository.ts';
import type { MoneyAtSuppliers } from './money.service.ts';

interface Chart {
  wide: string;
  narrow: string;
  table: Drawing['table'];
}

interface UnitView {
  href: string;
  code: string;
  supplier: string;
  what: string;
  place: string;
  when: string;
  open: string;
}

export interface MoneyView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string }[] };
  currency: string;
  bands: string[];
  suppliers: {
    name: string;
    out: string;
    outHref: string;
    ages: { amount: string; href: string | undefined }[];
    late: string;
    lateHref: string | undefined;
    shelf: string;
    soon: string;
    owe: string;
  }[];
  ageChart: Chart;
  monthChart: Chart;
  soon: UnitView[];
  differences: { word: string; supplier: string; words: string; amount: string; href: string; about: string }[];
  differencesHref: string;
  families: CostView[];
  listings: CostView[];
}

interface CostView {
  name: string;
  detail: string;
  href: string | undefined;
  pieces: number;
  lost: string;
}

const BAND_WORDS: Readonly<Record<AgeBand, string>> = {
  'to-7': 'up to 7 days',
  'to-14': '8 to 14 days',
  'to-30': '15 to 30 days',
  'to-60': '31 to 60 days',
  'over-60': 'over 60 days',
};

const DIFFERENCE_WORDS: Readonly<Record<string, string>> = {
  'not-credited': 'missing',
  short: 'short',
  over: 'too much',
  'restocking-beyond-terms': 'kept beyond terms',
  unknown: 'unknown',
  twice: 'twice',
  price: 'other price',
};

const isNothing = (amount: string): boolean => new Decimal(amount).isZero();
const shown = (amount: string): string => (isNothing(amount) ? '' : amountText(amount));

export function presentMoney(money: MoneyAtSuppliers): MoneyView {
  const { exposure, currency } = money;
  const sum = (pick: (row: (typeof exposure)[number]) => string): string =>
    new Decimal(sumAmounts(['0', ...exposure.map(pick)])).toFixed(2);
  const late = sum((row) => row.late);
  return {
    title: 'Money at suppliers',
    head: {
      title: 'Money at suppliers',
      lead: `${moneyText(
        sum((row) => row.atSupplier),
        currency,
      )} is at suppliers${isNothing(late) ? ', none of it late' : `; ${moneyText(late, currency)} of it is late`}.`,
      rest: `${moneyText(
        sum((row) => row.leavesSoon),
        currency,
      )} on the shelf must leave within 7 days or it is ours.`,
      actions: [
        { href: urls.moneyCsv, label: 'As a table (CSV)' },
        { href: urls.papers, label: 'Suppliers’ papers' },
      ],
    },
    currency,
    bands: AGE_BANDS.map(({ key }) => BAND_WORDS[key]),
    suppliers: exposure.map((row) => ({
      name: row.supplier,
      out: amountText(row.atSupplier),
      outHref: urls.moneyUnits({ what: 'at-supplier', supplier: row.supplierId }),
      ages: AGE_BANDS.map(({ key }) => ({
        amount: shown(row.byAge[key]),
        href: isNothing(row.byAge[key]) ? undefined : urls.moneyUnits({ what: 'at-supplier', supplier: row.supplierId, age: key }),
      })),
      late: shown(row.late),
      lateHref: isNothing(row.late) ? undefined : urls.moneyUnits({ what: 'late', supplier: row.supplierId }),
      shelf: shown(row.onShelf),
      soon: shown(row.leavesSoon),
      owe: shown(row.weOwe),
    })),
    ageChart: chart('age', {
      form: 'by-age',
      ages: AGE_BANDS.map(({ key }) => ({
        label: BAND_WORDS[key],
        out: figure(
          sum((row) => row.byAge[key]),
          currency,
        ),
      })),
    }),
    monthChart: chart('month', {
      form: 'by-month',
      months: money.months.map(({ month, recovered, lost }) => ({
        label: DateTime.fromFormat(month, 'yyyy-MM').setLocale('en-GB').toFormat('LLL yy'),
        recovered: figure(recovered, currency),
        lost: figure(lost, currency),
      })),
    }),
    soon: money.soon.map(unitView),
    differences: money.differences.map((row) => ({
      word: DIFFERENCE_WORDS[row.kind] ?? row.kind,
      supplier: row.document.supplier,
      words: row.words,
      amount: `${amountText(row.amount)}${row.isWithTax ? ' with tax' : ''}`,
      href: row.unitId === null ? urls.paper(row.document.id) : urls.unit(row.unitId),
      about: row.unit ?? row.document.number,
    })),
    differencesHref: `${urls.papers}#differences`,
    families: money.families.map(costView),
    listings: money.listings.map(costView),
  };
}

const figure = (amount: string, currency: string): { amount: number; text: string } => ({
  amount: Math.max(0, Number(amount)),
  text: moneyText(new Decimal(amount).toFixed(2), currency),
});

function chart(idPrefix: string, data: Parameters<typeof moneyBars>[0]): Chart {
  const draw = (part: string, widthPx: number): Drawing => moneyBars(data, { palette: 'page', idPrefix: `${idPrefix}-${part}`, widthPx });
  const wide = draw('w', 680);
  return { wide: wide.svg, narrow: draw('n', 350).svg, table: wide.table };
}

const costView = ({ name, detail, href, pieces, lost }: CostRow): CostView => ({
  name,
  detail,
  href: href === null ? undefined : urls.variant(href),
  pieces,
  lost: amountText(new Decimal(lost).toFixed(2)),
});

const day = (iso: string): string => plainDate(new Date(`${iso}T00:00:00Z`));

function unitView(unit: UnitRow): UnitView {
  const when =
    unit.handedOverOn !== null && unit.place === 'handed-over'
      ? `sent ${day(unit.handedOverOn)}`
      : unit.returnBy === null
        ? ''
        : `back by ${day(unit.returnBy)}`;
  return {
    href: urls.unit(unit.id),
    code: unitCodeText(unit.code),
    supplier: unit.supplier,
    what: `${unit.partNumber}, ${unit.name}`,
    place: UNIT_PLACE_WORDS[unit.place as UnitPlace],
    when,
    open: amountText(unit.open),
  };
}

export interface MoneyUnitsView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string }[] };
  currency: string;
  units: UnitView[];
}

const WHAT_WORDS: Readonly<Record<string, string>> = {
  'at-supplier': 'at suppliers',
  late: 'late',
  soon: 'leaving within 7 days',
  owed: 'credited too much: we owe',
};

export function presentMoneyUnits(
  units: readonly UnitRow[],
  { what, age, most, currency, csvHref }: { what: string; age: AgeBand | undefined; most: number; currency: string; csvHref: string },
): MoneyUnitsView {
  const of = [WHAT_WORDS[what] ?? '', ...(age === undefined ? [] : [BAND_WORDS[age]])].join(', ');
  return {
    title: 'Money at suppliers',
    head: {
      title: 'Money at suppliers',
      lead: `${units.length === most ? `The first ${most}` : units.length} ${units.length === 1 ? 'piece' : 'pieces'}, ${of}.`,
      rest: 'The oldest first; each leads to its history.',
      actions: [
        { href: urls.moneyAtSuppliers, label: 'To the sums' },
        { href: csvHref, label: 'As a table (CSV)' },
      ],
    },
    currency,
    units: units.map(unitView),
  };
}

const CSV_HEAD = ['code', 'supplier', 'part number', 'part', 'place', 'handed over', 'back by', 'open net', 'currency'];

export const moneyRows = (units: readonly UnitRow[], currency: string): string[][] => [
  CSV_HEAD,
  ...units.map(({ code, supplier, partNumber, name, place, handedOverOn, returnBy, open }) => [
    ...[unitCodeText(code), supplier, partNumber, name, UNIT_PLACE_WORDS[place as UnitPlace]],
    ...[handedOverOn ?? '', returnBy ?? '', open, currency],
  ]),
];
