import { DEBT_WORDS, type DebtKind } from '#libs/checklist';
import { Decimal, sumAmounts } from '#libs/money';
import { type FormState, rowError } from '../../platform/pages/form-state.ts';
import { dateTimeText, isPast, plainDate } from '../../web/dates.ts';
import { amountText, moneyText } from '../../web/money-text.ts';
import { urls } from '../../web/urls.ts';
import type { JobMoney, OpenDebt, PassedWithout, SupplierExposure } from './records.repository.ts';

export interface OfficeFacts {
  jobs: readonly JobMoney[];
  exposure: readonly SupplierExposure[];
  passedWithout: readonly PassedWithout[];
  debts: readonly OpenDebt[];
  customersOwe: string;
  drumL: string;
  /** `brokenAt` is there when the whole chain was walked, which is work for a button and not for every view. */
  chain: { sealed: number; unsealed: number; brokenAt?: bigint | null };
  now: Date;
  timeZone: string;
  currency: string;
  form: FormState;
}

export interface OfficeView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string }[] };
  jobs: {
    href: string;
    number: number;
    car: string;
    invoice: string;
    issued: string;
    net: string;
    labour: string;
    margin: string;
    open: string;
  }[];
  suppliers: { name: string; units: number; open: string; soonest: string }[];
  moneyHref: string;
  passed: { href: string; number: number; step: string; why: string; by: string; at: string }[];
  debts: {
    href: string;
    number: number;
    car: string;
    word: string;
    due: string;
    isLate: boolean;
    end: string;
    wrong: string | undefined;
  }[];
  drum: string;
  chain: { words: string; prove: string };
  currency: string;
  errors: FormState['summary'];
}

/** The reason of an action that passed a hold point without its evidence: its code, and the words beside it. */
function reasonOf(value: unknown): string {
  if (typeof value !== 'object' || value === null) return '';
  const { reason, words } = value as { reason?: unknown; words?: unknown };
  return [reason, words].filter((part): part is string => typeof part === 'string' && part !== '').join(': ');
}

function chainWords({ sealed, unsealed, brokenAt }: OfficeFacts['chain']): string {
  if (typeof brokenAt === 'bigint')
    return `Entry ${brokenAt} no longer agrees with the one before it. Keep a copy of the data and ask for help.`;
  const rest = unsealed === 0 ? '' : ` ${unsealed} more will be within seconds.`;
  return `${sealed} entries are chained, each to the one before${brokenAt === null ? ', and none was changed' : ''}.${rest}`;
}

export function presentOffice(facts: OfficeFacts): OfficeView {
  const { currency, timeZone, now } = facts;
  const atSuppliers = sumAmounts([...facts.exposure.map(({ open }) => open), '0']);
  const isLate = (dueOn: Date | null): boolean => dueOn !== null && isPast(dueOn, now, timeZone);
  const late = facts.debts.filter(({ dueOn }) => isLate(dueOn)).length;
  return {
    title: 'Office',
    head: {
      title: 'Office',
      lead: `${moneyText(new Decimal(atSuppliers).toFixed(2), currency)} is in parts not yet fitted, credited or returned; customers owe ${moneyText(facts.customersOwe, currency)}.`,
      rest:
        late === 0
          ? 'Nothing that is owed is past its date.'
          : `${late === 1 ? 'One debt is past its date' : `${late} debts are past their dates`}.`,
      actions: [
        { href: urls.workshop, label: 'Workshop details' },
        { href: urls.people, label: 'People' },
      ],
    },
    jobs: facts.jobs.map((job) => ({
      href: urls.job(job.jobId),
      number: job.jobNumber,
      car: job.car,
      invoice: job.invoiceNumber,
      issued: plainDate(job.issuedOn),
      net: amountText(job.net),
      labour: amountText(job.labour),
      margin: amountText(new Decimal(job.partsSold).minus(job.partsCost).toFixed(2)),
      open: new Decimal(job.open).isZero() ? 'paid' : amountText(job.open),
    })),
    moneyHref: urls.moneyAtSuppliers,
    suppliers: facts.exposure.map(({ supplier, units, open, soonest }) => ({
      name: supplier,
      units,
      open: amountText(open),
      soonest: soonest === null ? '' : plainDate(soonest),
    })),
    passed: facts.passedWithout.map((entry) => ({
      href: urls.cardStep(entry.jobId, entry.step),
      number: entry.jobNumber,
      step: entry.step,
      why: reasonOf(entry.value),
      by: entry.by,
      at: dateTimeText(entry.at, timeZone),
    })),
    debts: facts.debts.map((debt) => ({
      href: urls.job(debt.jobId),
      number: debt.jobNumber,
      car: debt.car,
      word: DEBT_WORDS[debt.kind as DebtKind] ?? debt.kind,
      due: debt.dueOn === null ? '' : plainDate(debt.dueOn),
      isLate: isLate(debt.dueOn),
      end: urls.endDebt(debt.id),
      wrong: rowError(facts.form, { action: urls.endDebt(debt.id), field: 'why' }),
    })),
    drum: `${Number(facts.drumL).toFixed(1)} L`,
    chain: { words: chainWords(facts.chain), prove: `${urls.office}?record=proved#record` },
    currency,
    // A form a row: which row is said beside its field.
    errors: facts.form.summary.map(({ message }) => ({ field: '', message })),
  };
}
