import { dateTimeText } from '../../web/dates.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { urls } from '../../web/urls.ts';
import type { MissingRun } from './tablet-facts.ts';
import type { StrayRow, TabletRow } from './tablets.repository.ts';

export interface TabletsView {
  title: string;
  head: { title: string; lead: string; rest: string };
  tablets: { name: string; state: string; seen: string; missing: string; revoke: string | null }[];
  strays: { tablet: string; at: string; what: string; why: string; sent: string; lookAt: string }[];
  action: string;
  fields: Record<string, FieldView>;
  errors: FormState['summary'];
}

export function presentTablets(
  { tablets, strays, missing }: { tablets: readonly TabletRow[]; strays: readonly StrayRow[]; missing: readonly MissingRun[] },
  { form, timeZone, now }: { form: FormState; timeZone: string; now: Date },
): TabletsView {
  const enrolled = tablets.filter(({ enrolledAt, revokedAt }) => enrolledAt !== null && revokedAt === null).length;
  const words = enrolled === 1 ? 'One tablet is enrolled.' : `${enrolled === 0 ? 'No' : enrolled} tablets are enrolled.`;
  return {
    title: 'Tablets',
    head: {
      title: 'Tablets',
      lead: words,
      rest: 'A tablet records without a network and sends when it has one; who holds it signs in with a PIN.',
    },
    tablets: tablets.map((tablet) => ({
      name: tablet.name,
      state: stateOf(tablet, now, timeZone),
      seen: tablet.lastSeenAt === null ? '–' : dateTimeText(tablet.lastSeenAt, timeZone),
      missing: missing
        .filter(({ tabletId }) => tabletId === tablet.id)
        .map(({ from, to }) => (from === to ? `${from}` : `${from} to ${to}`))
        .join(', '),
      revoke: tablet.revokedAt === null ? urls.revokeTablet(tablet.id) : null,
    })),
    strays: strays.map(({ id, tablet, sent, why, receivedAt }) => ({
      tablet: tablet.name,
      at: dateTimeText(receivedAt, timeZone),
      what: whatWasSent(sent),
      why,
      sent: JSON.stringify(sent, null, 1),
      lookAt: urls.lookAtStray(id),
    })),
    action: urls.tablets,
    errors: form.summary,
    fields: formFields(form, [{ name: 'name', label: 'What it is called', placeholder: 'Bay 2', maxlength: 60, required: true }]),
  };
}

function stateOf({ enrolledAt, revokedAt, codeUntil }: TabletRow, now: Date, timeZone: string): string {
  if (revokedAt !== null) return `revoked ${dateTimeText(revokedAt, timeZone)}`;
  if (enrolledAt !== null) return `enrolled ${dateTimeText(enrolledAt, timeZone)}`;
  return codeUntil !== null && codeUntil > now ? 'waits for its code' : 'its code has run out';
}

function whatWasSent(sent: unknown): string {
  const { kind, step } = (typeof sent === 'object' && sent !== null ? sent : {}) as Readonly<Record<string, unknown>>;
  return [kind, step].filter((part) => typeof part === 'string').join(', ') || 'something that is no action';
}
