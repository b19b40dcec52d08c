import type { DraftLine, LineKind, VatCategory } from '#libs/invoicing';
import type { LineEdit } from './job-bill.repository.ts';

/** A line of the draft with where it comes from and what the desk did to it. */
export interface EditedLine extends DraftLine {
  origin: string;
  changedWhy: string | null;
}

/** Names a computed line, so that the desk's change finds it again when the draft is computed anew. */
export const originOf = (line: DraftLine): string => `${line.kind}:${line.itemNumber ?? line.name}`;

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
  };
}

/** The computed lines with the desk's changes: changed ones replaced, removed ones left out, added ones at the end, numbered anew. */
export function withEdits(computed: readonly DraftLine[], edits: readonly LineEdit[]): EditedLine[] {
  const byOrigin = new Map(edits.map((edit) => [edit.origin, edit]));
  const kept = computed.flatMap((line): EditedLine[] => {
    const origin = originOf(line);
    const edit = byOrigin.get(origin);
    if (edit === undefined) return [{ ...line, origin, changedWhy: null }];
    if (edit.isRemoved) return [];
    return [{ ...line, ...ofEdit(edit) }];
  });
  const known = new Set(computed.map(originOf));
  const added = edits.filter(({ origin, isRemoved }) => !isRemoved && !known.has(origin)).map(ofEdit);
  return [...kept, ...added].map((line, index) => ({ ...line, id: String(index + 1) }));
}
