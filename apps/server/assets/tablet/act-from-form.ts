import type { Action } from '#libs/checklist';
import { actionFromForm } from '../../src/features/job-cards/card-form/action-from-form.ts';
import { isFinishedBy, judgeAction, placeOf } from '../../src/features/job-cards/card-form/judge-action.ts';
import { namePeople } from '../../src/features/job-cards/name-people.ts';
import type { FieldError } from '../../src/platform/domain-error.ts';
import type { FormState } from '../../src/platform/pages/form-state.ts';
import type { LocalCard } from './card-from-sheet.ts';
import type { DeviceFacts, Holder } from './device-types.ts';
import { newId } from './new-id.ts';

/** An act of the card's forms, or what has to change in the form. */
export type FormAct =
  | { readonly ok: true; readonly action: Omit<Action, 'deviceSeq'>; readonly isFinished: boolean }
  | { readonly ok: false; readonly form: string; readonly state: FormState };

/** What a form of the card was filled in with; files apart. */
export function fieldsOf(form: HTMLFormElement, button: HTMLElement | null): Record<string, string> {
  const data = new FormData(form, button);
  return Object.fromEntries([...data].flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : [])));
}

/** The same reading and the same judgement as on the server: what would not fit is mended at the form and never queued. */
export function actFromForm(
  { state, sheet }: LocalCard,
  fields: Readonly<Record<string, string>>,
  { device, holder, now, photoId }: { device: DeviceFacts; holder: Holder; now: Date; photoId: string | null },
): FormAct {
  const form = fields['_form'] ?? '';
  const place = placeOf(state, fields['step']);
  if (place === null) return refused(form, fields, [{ field: '', message: 'This card has no such step any more: open it again.' }]);
  const read = actionFromForm(place, { ...fields, photo: photoId ?? '' });
  if (!read.ok) return refused(form, fields, read.errors);
  const person = device.people.find(({ id }) => id === holder.staffId);
  if (read.kind === 'let-go' && (person?.role !== 'owner' || holder.signIn === null)) {
    return refused(form, fields, [{ field: 'letGo', message: 'Letting go of what is owed is the owner’s, signed in by PIN.' }]);
  }
  const { kind, step, value } = read;
  const byProof = holder.signIn === null ? 'picked-offline' : 'session';
  const action: Omit<Action, 'deviceSeq'> = {
    ...{ id: newId(), card: sheet.row.id, deviceId: device.tablet.id, kind, step, value },
    ...{ readAt: now.toISOString(), by: holder.staffId, byProof },
  };
  const { after, refusal } = judgeAction(state, action);
  if (!refusal) return { ok: true, action, isFinished: isFinishedBy(after, action) };
  const names = new Map(device.people.map(({ id, displayName }) => [id, displayName]));
  return refused(form, fields, [{ field: refusal.field, message: namePeople(refusal.why, names) }]);
}

export function refused(form: string, values: Readonly<Record<string, string>>, summary: readonly FieldError[]): FormAct & { ok: false } {
  const errors: Record<string, string> = {};
  for (const { field, message } of summary) errors[field] ??= message;
  return { ok: false, form, state: { values, errors, summary } };
}
