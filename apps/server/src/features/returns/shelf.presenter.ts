import { Decimal, sumAmounts } from '#libs/money';
import { expectedCredit } from '#libs/unit-life';
import type { FormState } from '../../platform/pages/form-state.ts';
import { plainDate } from '../../web/dates.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { moneyText } from '../../web/money-text.ts';
import { urls } from '../../web/urls.ts';
import { accountCloses } from './account-closes.ts';
import { type DrawnShelf, drawShelf } from './shelf-chart.ts';
import type { Shelf, ShelfUnit } from './shelf.service.ts';
import { unitActUrl } from './unit-urls.ts';

interface TodoRow {
  peg: string;
  word: string;
  supplier: string;
  href: string;
  label: string;
  what: string;
  whose: string;
  when: string;
  whenNote: string;
  amount: string;
  difference: string;
  act: { href: string; label: string } | undefined;
  post: { action: string; label: string; hidden: { name: string; value: string }[] } | undefined;
  keep: string | undefined;
}

export interface ShelfView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string; main?: boolean }[] };
  chart: DrawnShelf;
  hasUnits: boolean;
  todo: TodoRow[];
  /** Set aside while their jobs are decided. */
  aside: TodoRow[];
  asideWords: string;
  moreWords: string;
  exposure: { name: string; phone: string; out: string; late: string; shelf: string; soon: string; owe: string }[];
  account: { bold: string; words: string };
  find: { action: string; fields: Record<string, FieldView> };
  labelsHref: string;
  errors: FormState['summary'];
}

/** What stands first is what costs money first. */
const ORDER: readonly ((row: ShelfUnit) => boolean)[] = [
  ({ open }) => Number(open) < 0,
  ({ unit, against }) => unit.place === 'to-return' && against !== null,
  ({ unit }) => unit.place === 'to-return',
  ({ daysLate }) => daysLate !== null,
  ({ unit, isDue }) => unit.place === 'set-aside' && isDue,
  ({ unit }) => unit.place === 'taken-out',
  ({ unit }) => unit.place === 'handed-over',
];

/** On the bench for a car that is here: nothing to do yet. */
const isWaiting = ({ unit, isDue, against }: ShelfUnit): boolean => unit.place === 'set-aside' && !isDue && against === null;

const rankOf = (row: ShelfUnit): number => {
  const rank = ORDER.findIndex((is) => is(row));
  return rank === -1 ? ORDER.length : rank;
};

export function presentShelf(shelf: Shelf, find: FormState): ShelfView {
  const { units, suppliers, currency } = shelf;
  const sorted = [...units].sort((a, b) => rankOf(a) - rankOf(b) || (a.daysLeft ?? 9_999) - (b.daysLeft ?? 9_999));
  const aside = sorted.filter(isWaiting);
  const account = accountCloses(shelf.counts);
  return {
    title: 'Returns shelf',
    head: headOf(shelf),
    chart: drawShelf(shelf),
    hasUnits: units.length > 0,
    todo: sorted.filter((row) => !isWaiting(row)).map((row) => todoRow(row, currency)),
    aside: aside.map((row) => todoRow(row, currency)),
    asideWords:
      aside.length === 1
        ? 'One more is set aside while its job is decided'
        : `${aside.length} more are set aside while their jobs are decided`,
    moreWords: shelf.more === 0 ? '' : `${shelf.more} more stand behind these: what is most urgent is shown.`,
    exposure: suppliers.map((row) => ({
      name: row.supplier,
      phone: row.phone,
      out: moneyText(row.atSupplier, currency),
      late: moneyText(row.late, currency),
      shelf: moneyText(row.onShelf, currency),
      soon: moneyText(row.leavesSoon, currency),
      owe: Number(row.weOwe) === 0 ? '' : moneyText(row.weOwe, currency),
    })),
    account: {
      bold: account.isClosed ? 'The account closes.' : 'The account does not close: tell whoever looks after this system.',
      words: account.words,
    },
    find: {
      action: urls.findUnit,
      fields: formFields(find, [
        { name: 'code', label: 'Code of a piece', required: true, maxlength: 20, autocomplete: 'off', short: true },
      ]),
    },
    labelsHref: urls.labels,
    errors: find.summary,
  };
}

function headOf({ units, suppliers, month, currency }: Shelf): ShelfView['head'] {
  const sum = (pick: (row: Shelf['suppliers'][number]) => string): string =>
    new Decimal(sumAmounts(['0', ...suppliers.map(pick)])).toFixed(2);
  const late = sum(({ late: amount }) => amount);
  const soon = sum(({ leavesSoon }) => leavesSoon);
  const leaving = units
    .filter(({ unit, against }) => unit.place === 'to-return' && against === null)
    .sort((a, b) => (a.daysLeft ?? 9_999) - (b.daysLeft ?? 9_999));
  const [first] = leaving;
  const theirs = leaving.filter(({ unit }) => unit.variant.supplier.id === first?.unit.variant.supplier.id);
  const isLate = Number(late) > 0;
  return {
    title: 'Returns shelf',
    lead: `${moneyText(
      sum(({ atSupplier }) => atSupplier),
      currency,
    )} is at suppliers${isLate ? `; ${moneyText(late, currency)} of it is late` : ', none of it late'}.`,
    rest: `${moneyText(soon, currency)} must leave within a week or it is ours. In 30 days ${moneyText(month.recovered, currency)} came back, ${moneyText(month.lost, currency)} was given up.`,
    actions: [
      ...(first === undefined
        ? []
        : [
            {
              href: urls.handOver(first.unit.variant.supplier.id),
              label:
                theirs.length === 1
                  ? `Pack the one for ${first.unit.variant.supplier.name}`
                  : `Pack the ${theirs.length} for ${first.unit.variant.supplier.name}`,
              main: true,
            },
          ]),
      { href: urls.papers, label: 'Suppliers’ papers' },
    ],
  };
}

function todoRow(row: ShelfUnit, currency: string): TodoRow {
  const { unit, open } = row;
  return {
    ...verdictOf(row, currency),
    supplier: unit.variant.supplier.name,
    href: urls.unit(unit.id),
    label: unit.label,
    what: `${unit.variant.partNumber}, ${unit.variant.name}`,
    whose: unit.whose,
    ...whenOf(row),
    amount: moneyText(open, currency),
    ...actOf(row),
  };
}

function whenOf({ unit, sent, daysLeft }: ShelfUnit): Pick<TodoRow, 'when' | 'whenNote'> {
  if (sent) return { when: `sent ${plainDate(new Date(`${sent.day}T00:00:00Z`))}`, whenNote: `${sent.days} days ago` };
  if (unit.returnBy === null || daysLeft === null) return { when: 'no last day', whenNote: '' };
  const when = `${daysLeft < 0 ? 'was to leave by' : 'leaves by'} ${plainDate(unit.returnBy)}`;
  return { when, whenNote: daysLeft < 0 ? `${-daysLeft} days ago` : daysLeft === 0 ? 'today' : `${daysLeft} days left` };
}

function verdictOf({ unit, open, against, daysLate, isDue }: ShelfUnit, currency: string): Pick<TodoRow, 'peg' | 'word' | 'difference'> {
  if (Number(open) < 0) return { peg: 'does-not-fit', word: 'we owe', difference: 'credited more than was charged' };
  if (against !== null) return { peg: 'does-not-fit', word: 'stays here', difference: against };
  if (daysLate !== null) return { peg: 'does-not-fit', word: 'late', difference: `${daysLate} days past their days to credit` };
  if (unit.place === 'handed-over') {
    const back = expectedCredit({ restockingPercent: unit.variant.supplier.restockingPct }, open);
    const keeps = Number(unit.variant.supplier.restockingPct) === 0 ? '' : `, ${moneyText(back, currency)} by their terms`;
    return { peg: 'not-read', word: 'waiting', difference: `credit within ${unit.variant.supplier.daysToCredit} days${keeps}` };
  }
  if (unit.place === 'to-return') return { peg: 'inconclusive', word: 'to go', difference: 'ready to be handed over' };
  if (unit.place === 'taken-out') return { peg: 'inconclusive', word: 'decide', difference: 'was in a car' };
  return isDue
    ? { peg: 'inconclusive', word: 'decide', difference: 'its last day comes near, and nothing is chosen' }
    : { peg: 'not-read', word: 'set aside', difference: 'until the proof has passed' };
}

function actOf({ unit, against }: ShelfUnit): Pick<TodoRow, 'act' | 'post' | 'keep'> {
  const stock = unitActUrl(unit.id, 'stock');
  const none = { act: undefined, post: undefined, keep: undefined };
  if (unit.place === 'handed-over') return { ...none, act: { href: `${urls.unit(unit.id)}#money`, label: 'Record the credit' } };
  if (unit.place === 'to-return' && against === null)
    return { ...none, act: { href: urls.handOver(unit.variant.supplier.id), label: 'Hand it over' }, keep: stock };
  if (unit.place === 'to-return' || (unit.place === 'set-aside' && against !== null))
    return { ...none, post: { action: stock, label: 'Keep as stock', hidden: [] } };
  if (unit.place === 'set-aside')
    return {
      ...none,
      post: {
        action: unitActUrl(unit.id, 'return'),
        label: 'Send it back',
        hidden: [{ name: 'reason', value: reasonOf(unit.arrivalReason) }],
      },
      keep: stock,
    };
  return { ...none, act: { href: urls.unit(unit.id), label: 'Look at it' } };
}

const reasonOf = (arrival: string): string => (arrival === 'wrong' || arrival === 'damaged' ? arrival : 'not-needed');
