import type { DraftLine, LineKind, VatCategory } from '#libs/invoicing';
import type { LineEdit } from './job-bill.repository.ts';

/** A line of the draft with where it comes from and what the desk did to it. */
export interface EditedLine extends DraftLine {
  origin: string;
  changedWhy: string | null;
}

/** A line that the desk added by hand. */
const TYPED = 'typed:';

export const newTypedOrigin = (id: string): string => `${TYPED}${id}`;

const nameOf = (line: DraftLine): string => `${line.kind}:${line.itemNumber ?? line.name}`;

/**
 * Names the computed lines, so that the desk's change finds its line again when the draft is computed anew. Of two lines of the
 * same name the second is called the second: a change never hits both.
 */
export function originsOf(lines: readonly DraftLine[]): string[] {
  const seen = new Map<string, number>();
  return lines.map((line) => {
    const name = nameOf(line);
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return count === 1 ? name : `${name}#${count}`;
  });
}

function ofEdit(edit: LineEdit): EditedLine {
  return {
    id: '',
    origin: edit.origin,
    changedWhy: edit.changedWhy,
    kind: edit.kind as LineKind,
    name: edit.description,
    quantity: edit.quantity,
    unit: edit.unit,
    unitPrice: edit.unitPrice,
    vatCategory: edit.vatCategory as VatCategory,
    vatRate: edit.vatCategory === 'O' ? null : edit.vatRatePct,
    ...(edit.discount === null ? {} : { allowances: [{ amount: edit.discount, reason: edit.discountFor }] }),
  };
}

/** The computed lines with the desk's changes: changed ones replaced, removed ones left out, added ones at the end, numbered anew. */
export function withEdits(computed: readonly DraftLine[], edits: readonly LineEdit[]): EditedLine[] {
  const byOrigin = new Map(edits.map((edit) => [edit.origin, edit]));
  const origins = originsOf(computed);
  const kept = computed.flatMap((line, index): EditedLine[] => {
    const origin = origins[index] ?? '';
    const edit = byOrigin.get(origin);
    if (edit === undefined) return [{ ...line, origin, changedWhy: null }];
    if (edit.isRemoved) return [];
    return [{ ...line, ...ofEdit(edit) }];
  });
  // A change whose line is no longer computed (its part was taken out) bills nothing: only what was typed as a line of its own does.
  const added = edits.filter(({ origin, isRemoved }) => !isRemoved && origin.startsWith(TYPED)).map(ofEdit);
  return [...kept, ...added].map((line, index) => ({ ...line, id: String(index + 1) }));
}
