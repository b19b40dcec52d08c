import { toDecimal } from '#libs/money';
import { type DraftLine } from '../document/invoice-line.ts';
import { lineInputOf } from '../document/totals-input-of.ts';
import { done, type Outcome, refused } from '../outcome.ts';
import { computeTotals } from '../totals/compute-totals.ts';
import { type Totals } from '../totals/totals-input.ts';
import { checkJobWork } from './check-job-work.ts';
import { consumableLines } from './consumable-lines.ts';
import { coolantLines } from './coolant-lines.ts';
import { type DraftedWork, type HeldPackage, type NotBilled, type UnnumberedLine } from './drafted.ts';
import { type JobWork, type WorkPackage } from './job-work.ts';
import { labourLines } from './labour-lines.ts';
import { partLines } from './part-lines.ts';
import { wasteLines } from './waste-lines.ts';

/**
 * The lines of an invoice from what was done on the job: labour, parts, coolant as product, small materials, waste. Only
 * packages that the customer said yes to, and only up to the ceilings; the rest is held back whole, with what to do.
 *
 * @param work packages with their answers, and what was done under each
 * @returns lines, what is held back and what is not billed, or the fields to change
 */
export function draftLines(work: JobWork): Outcome<DraftedWork> {
  const errors = checkJobWork(work);
  if (errors.length > 0) return refused(errors);
  const drafted = work.packages.map((item) => ({ item, ...linesOfPackage(work, item.id) }));
  const lines: DraftLine[] = [];
  const held: HeldPackage[] = [];
  for (const { item, lines: unnumbered } of drafted) {
    if (unnumbered.length === 0) continue;
    const numbered = unnumbered.map((line, index) => ({ ...line, id: String(lines.length + index + 1) }));
    const refusal = reasonToHold(item, { own: sumsOf(numbered), all: sumsOf([...lines, ...numbered]), jobCeiling: work.ceiling });
    if (refusal === null) lines.push(...numbered);
    else held.push({ ...refusal, lines: numbered });
  }
  return done({
    lines,
    held,
    notBilled: drafted.flatMap((part) => part.notBilled),
    taxInclusive: sumsOf(lines)?.taxInclusive ?? '0.00',
    ceiling: work.ceiling,
  });
}

function linesOfPackage(work: JobWork, packageId: string): { lines: UnnumberedLine[]; notBilled: NotBilled[] } {
  const own = <Fact extends { readonly packageId: string }>(facts: readonly Fact[]): Fact[] =>
    facts.filter((fact) => fact.packageId === packageId);
  const labour = labourLines(own(work.labour));
  const parts = partLines(own(work.parts));
  const coolant = coolantLines(own(work.coolant));
  return {
    lines: [
      ...labour.lines,
      ...parts.lines,
      ...coolant.lines,
      ...consumableLines(own(work.consumables), labour.lines),
      ...wasteLines(own(work.waste)),
    ],
    notBilled: [...labour.notBilled, ...parts.notBilled, ...coolant.notBilled],
  };
}

function sumsOf(lines: readonly DraftLine[]): Totals | null {
  return lines.length === 0 ? null : computeTotals({ lines: lines.map(lineInputOf) });
}

interface Sums {
  readonly own: Totals | null;
  readonly all: Totals | null;
  readonly jobCeiling: string | null;
}

function reasonToHold(item: WorkPackage, { own, all, jobCeiling }: Sums): Omit<HeldPackage, 'lines'> | null {
  const sum = own?.taxInclusive ?? '0.00';
  const held = { packageId: item.id, name: item.name, taxExclusive: own?.taxExclusive ?? '0.00', taxInclusive: sum };
  if (item.answer.kind === 'no')
    return {
      ...held,
      reason: 'refused',
      words: `The customer said no to "${item.name}", but ${sum} of work is on it. Get a yes or take it off.`,
    };
  if (item.answer.kind === 'open')
    return {
      ...held,
      reason: 'no-answer',
      words: `The customer has not answered on "${item.name}" (${sum} with tax). Ask, and record who said yes and when.`,
    };
  if (item.ceiling !== null && toDecimal(sum).gt(toDecimal(item.ceiling)))
    return {
      ...held,
      reason: 'above-its-ceiling',
      words: `"${item.name}" comes to ${sum} with tax, the customer agreed to ${item.ceiling}. Get a new yes or give a discount.`,
    };
  const total = all?.taxInclusive ?? '0.00';
  if (jobCeiling !== null && toDecimal(total).gt(toDecimal(jobCeiling)))
    return {
      ...held,
      reason: 'above-job-ceiling',
      words: `With "${item.name}" the job comes to ${total} with tax, the customer agreed to ${jobCeiling}. Get a new yes or give a discount.`,
    };
  return null;
}
