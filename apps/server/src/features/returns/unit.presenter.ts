import { ARRIVAL_REASON_WORDS, expectedCredit, openAmount, UNIT_MOVES, UNIT_PLACE_WORDS, type UnitPlace } from '#libs/unit-life';
import type { FormState } from '../../platform/pages/form-state.ts';
import type { Role } from '../../platform/request-context.ts';
import { dateTimeText, plainDate } from '../../web/dates.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { moneyText } from '../../web/money-text.ts';
import { returnNoteNumber } from '../../web/return-note-number.ts';
import { termsText } from '../../web/terms-text.ts';
import { urls } from '../../web/urls.ts';
import { canTakeBack } from './unit-acts.service.ts';
import { unitActUrl } from './unit-urls.ts';
import type { MoveRow, Unit } from './units.repository.ts';

export interface UnitPageFacts {
  unit: Unit;
  moves: readonly MoveRow[];
  names: ReadonlyMap<string, string>;
  against: string | null;
  /** Return notes that name it. */
  notes: readonly { id: string; number: number }[];
  role: Role;
  timeZone: string;
  currency: string;
}

export interface UnitForms {
  act: FormState;
  money: FormState;
}

interface UnitActView {
  action: string;
  label: string;
  hidden: { name: string; value: string }[];
  field: FieldView | undefined;
  isMain: boolean;
  isLoss: boolean;
  /** Opens when asked for: it needs words, and is not what is usually done here. */
  isFolded: boolean;
}

export interface UnitView {
  title: string;
  head: { title: string; lead: string; rest: string; keyTag: { key: string; href: string } | undefined };
  page: string;
  caution: string;
  facts: { term: string; said: string }[];
  moves: { at: string; from: string; to: string; by: string; why: string }[];
  money: { at: string; kind: string; amount: string; reference: string; by: string; takeBack: string | undefined }[];
  hasMoney: boolean;
  labelHref: string;
  notes: { href: string; label: string }[];
  open: string;
  acts: UnitActView[];
  enter: { action: string; fields: Record<string, FieldView> };
  errors: FormState['summary'];
}

const MONEY_WORDS: Readonly<Record<string, string>> = {
  charged: 'charged',
  credited: 'credited',
  'carrier-paid': 'paid by the carrier',
  'loss-accepted': 'loss accepted',
};

export function presentUnit(facts: UnitPageFacts, forms: UnitForms): UnitView {
  const { unit, moves, names, against, notes, timeZone, currency } = facts;
  const who = (id: string | null): string => (id === null ? 'by itself' : (names.get(id) ?? 'somebody'));
  const open = openAmount(unit.money).toFixed(2);
  const page = urls.unit(unit.id);
  return {
    title: unit.label,
    page,
    head: {
      title: unit.label,
      lead: `${UNIT_PLACE_WORDS[unit.place]}${against === null ? '.' : `, and can’t go back. ${against}`}`,
      rest: `${unit.variant.partNumber}, ${unit.variant.name}, from ${unit.variant.supplier.name}.`,
      keyTag: unit.job?.keyTag ? { key: String(unit.job.keyTag), href: urls.jobParts(unit.job.id) } : undefined,
    },
    caution: cautionOf(unit),
    facts: factsOf(facts),
    moves: moves.map(({ at, from, to, byId, why, evidence }) => ({
      at: dateTimeText(at, timeZone),
      from: UNIT_PLACE_WORDS[from],
      to: UNIT_PLACE_WORDS[to],
      by: who(byId),
      why: [why, evidence].filter((words) => words !== '').join('; '),
    })),
    money: unit.money.map((entry) => ({
      at: dateTimeText(entry.at, timeZone),
      kind: MONEY_WORDS[entry.kind] ?? entry.kind,
      amount: moneyText(entry.amountNet, currency),
      reference: [entry.reference, entry.why].filter((words) => words !== '').join('; '),
      by: who(entry.byId),
      takeBack: canTakeBack(unit.money, entry) ? unitActUrl(unit.id, `money/${entry.id}/take-back`) : undefined,
    })),
    hasMoney: unit.money.length > 0,
    labelHref: urls.label(unit.id),
    notes: notes.map(({ id, number }) => ({ href: urls.returnNote(id), label: returnNoteNumber(number) })),
    open: moneyText(open, currency),
    acts: actsOf(facts, forms.act),
    enter: { action: unitActUrl(unit.id, 'money'), fields: moneyFields(unit, forms.money, { open, currency }) },
    errors: [...forms.act.summary, ...forms.money.summary],
  };
}

function cautionOf({ place, isOpened, variant: { supplier } }: Unit): string {
  const isHere = place === 'expected' || place === 'set-aside' || place === 'to-return';
  return isHere && !isOpened && supplier.unopenedOnly ? `${supplier.name} takes back unopened boxes only.` : '';
}

function factsOf({ unit, currency, timeZone }: UnitPageFacts): UnitView['facts'] {
  const { orderLine, arrivedAt, returnBy, isOpened, variant } = unit;
  const said: [string, string][] = [
    ['Why it is here', ARRIVAL_REASON_WORDS[unit.arrivalReason]],
    ['Order', orderLine ? `${orderLine.order.number}, ${moneyText(orderLine.priceNet, currency)} net` : ''],
    ['Came', arrivedAt ? dateTimeText(arrivedAt, timeZone) : ''],
    ['Back by', returnBy ? plainDate(returnBy) : ''],
    ['Box', arrivedAt === null ? '' : isOpened ? 'opened' : 'shut'],
    ['Job', unit.job ? String(unit.job.number) : ''],
    ['Terms', termsText(variant.supplier, currency)],
  ];
  return said.filter(([, words]) => words !== '').map(([term, words]) => ({ term, said: words }));
}

function moneyFields(unit: Unit, form: FormState, { open, currency }: { open: string; currency: string }): Record<string, FieldView> {
  const isOut = unit.place === 'handed-over' || unit.place === 'to-return';
  const promised = Number(open) > 0 ? expectedCredit({ restockingPercent: unit.variant.supplier.restockingPct }, open) : '';
  return formFields(form, [
    {
      name: 'kind',
      label: 'What came',
      value: isOut || unit.money.length > 0 ? 'credited' : 'charged',
      options: [
        { value: 'credited', label: 'A credit' },
        { value: 'carrier-paid', label: 'Paid by the carrier' },
        { value: 'charged', label: 'A charge' },
      ],
    },
    {
      name: 'amount',
      label: 'Net amount',
      value: isOut ? promised : '',
      unit: currency,
      inputmode: 'decimal',
      required: true,
      maxlength: 10,
      ...(isOut && promised !== '' ? { hint: 'By their terms; type what the document says.' } : {}),
    },
    { name: 'reference', label: 'Number of the document', required: true, maxlength: 120, autocomplete: 'off' },
  ]);
}

interface ActSpec {
  to: UnitPlace;
  act: string;
  label: string;
  /** Where it is sent, if not to this page's own acts. */
  url?: (id: string) => string;
  from?: readonly UnitPlace[];
  hidden?: { name: string; value: string }[];
  asks?: { name: string; label: string; hint?: string };
  isMain?: boolean;
  isLoss?: boolean;
  isOwners?: boolean;
}

const WHY = { name: 'why', label: 'Why' };
const because = (reason: string): { name: string; value: string }[] => [{ name: 'reason', value: reason }];

/** In the order in which they are offered; only those that lead on from where the piece is. */
const ACTS: readonly ActSpec[] = [
  { to: 'set-aside', act: 'came', url: (id) => urls.delivery(id, 'came'), from: ['expected'], label: 'It came', isMain: true },
  { to: 'called-off', act: 'called-off', url: (id) => urls.delivery(id, 'called-off'), label: 'Call it off' },
  { to: 'never-came', act: 'never-came', url: (id) => urls.delivery(id, 'never-came'), label: 'It never came' },
  {
    to: 'handed-over',
    act: 'hand-over',
    label: 'Hand it over',
    isMain: true,
    asks: { name: 'evidence', label: 'Signed by, or tracking number', hint: 'Without it nobody can prove that it left.' },
  },
  {
    to: 'to-return',
    act: 'return',
    from: ['set-aside', 'stocked'],
    label: 'Send it back: not needed',
    hidden: because('not-needed'),
    isMain: true,
  },
  { to: 'to-return', act: 'return', from: ['taken-out'], label: 'Send it back: failed', hidden: because('failed'), isMain: true },
  { to: 'to-return', act: 'return', from: ['set-aside'], label: 'Send it back: wrong piece', hidden: because('wrong') },
  { to: 'to-return', act: 'return', from: ['set-aside'], label: 'Send it back: damaged', hidden: because('damaged') },
  { to: 'stocked', act: 'stock', label: 'Keep as stock' },
  { to: 'set-aside', act: 'aside', from: ['to-return', 'handed-over', 'taken-out', 'written-off'], label: 'It is here again', asks: WHY },
  { to: 'taken-out', act: 'taken-out', label: 'It was taken out again', asks: WHY },
  { to: 'sold', act: 'sold', label: 'It is sold', asks: { name: 'document', label: 'Sold with document' } },
  { to: 'gone-for-good', act: 'gone', label: 'Close it' },
  { to: 'written-off', act: 'write-off', label: 'Write it off, accepting the loss', asks: WHY, isLoss: true, isOwners: true },
];

function actsOf({ unit, against, role }: UnitPageFacts, form: FormState): UnitActView[] {
  const open = openAmount(unit.money);
  const isOffered = ({ to, act, from, hidden, isOwners }: ActSpec): boolean => {
    if (!UNIT_MOVES.some((move) => move.from === unit.place && move.to === to)) return false;
    if (from !== undefined && !from.includes(unit.place)) return false;
    if (isOwners === true && role !== 'owner') return false;
    if (act === 'gone' && !open.isZero()) return false;
    return !(act === 'return' && hidden?.[0]?.value === 'not-needed' && against !== null);
  };
  const offered = ACTS.filter(isOffered);
  const isLossOpen = role === 'owner' && open.greaterThan(0) && unit.place === 'handed-over';
  return [...offered, ...boxActs(unit), ...(isLossOpen ? [LOSS] : [])].map((spec) => toAct(unit, spec, form));
}

const LOSS: Omit<ActSpec, 'to'> = { act: 'loss', label: 'Accept the loss', asks: WHY, isLoss: true };

/** Opening a box can cost its right of return: then the button says so. */
function boxActs({ place, isOpened, variant: { supplier } }: Unit): Omit<ActSpec, 'to'>[] {
  if (isOpened || place !== 'set-aside') return [];
  if (!supplier.unopenedOnly) return [{ act: 'opened', label: 'Its box is open now' }];
  return [{ act: 'opened', label: 'Open its box, and keep it', hidden: [{ name: 'sure', value: 'on' }], isLoss: true }];
}

function toAct(
  unit: Unit,
  { act, url, label, hidden = [], asks, isMain = false, isLoss = false }: Omit<ActSpec, 'to'>,
  form: FormState,
): UnitActView {
  const fields = asks === undefined ? {} : formFields(form, [{ ...asks, required: true, maxlength: 120, autocomplete: 'off' }]);
  const field = asks && fields[asks.name];
  // Several acts may ask why on one page: each field has an id of its own.
  return {
    action: url?.(unit.id) ?? unitActUrl(unit.id, act),
    label,
    hidden,
    field: field && { ...field, id: `${act}-${field.name}` },
    isMain,
    isLoss,
    isFolded: asks !== undefined && !isMain,
  };
}
