import type { FormState } from '../../platform/pages/form-state.ts';
import type { Workshop } from '../../platform/workshop-facts.ts';
import { dateText, dateTimeText, plainDate } from '../../web/dates.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { moneyText } from '../../web/money-text.ts';
import { qrCode } from '../../web/qr-code.ts';
import { returnNoteNumber } from '../../web/return-note-number.ts';
import { urls } from '../../web/urls.ts';
import type { ReturnNote } from './return-notes.service.ts';

const REASONS: Readonly<Record<string, string>> = { wrong: 'wrong piece', damaged: 'came damaged', 'taken-out': 'failed' };

export interface ReturnNotePrintView {
  title: string;
  number: string;
  qr: string;
  workshop: { name: string; lines: string[]; phone: string };
  supplier: { name: string; account: string };
  made: string;
  units: { code: string; part: string; name: string; order: string; reason: string; box: string }[];
  count: string;
  evidence: string;
  isDemo: boolean;
}

export function presentReturnNote({
  note,
  units,
  workshop,
  who,
  now,
}: ReturnNote & { workshop: Workshop; who: string; now: Date }): ReturnNotePrintView {
  const number = returnNoteNumber(note.number);
  return {
    title: `Return note ${number}`,
    number,
    qr: qrCode(number),
    workshop: {
      name: workshop.name,
      lines: [...workshop.addressLines, `${workshop.postcode} ${workshop.city}`.trim()].filter((line) => line !== ''),
      phone: workshop.phone,
    },
    supplier: { name: note.supplier.name, account: note.supplier.accountNumber },
    made: `${who === '' ? '' : `${who}, `}${dateText(note.madeAt, workshop.timeZone)}, printed ${dateTimeText(now, workshop.timeZone)}`,
    units: units.map((unit) => ({
      code: unit.label,
      part: unit.variant.partNumber,
      name: unit.variant.name,
      order: unit.orderLine ? `order ${unit.orderLine.order.number}` : '',
      reason: REASONS[unit.arrivalReason] ?? 'not needed',
      box: unit.isOpened ? 'opened' : 'unopened',
    })),
    count: units.length === 1 ? 'One piece' : `${units.length} pieces`,
    evidence: note.handedOverAt ? `${note.evidence}, ${dateTimeText(note.handedOverAt, workshop.timeZone)}` : '',
    isDemo: workshop.isDemo,
  };
}

export interface ReturnNoteView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string; main?: boolean }[] };
  units: { href: string; label: string; what: string; place: string; open: string; back: string }[];
  handOver: { action: string; fields: Record<string, FieldView> } | undefined;
  errors: FormState['summary'];
}

export function presentReturnNotePage(
  form: FormState,
  {
    note,
    units,
    currency,
    timeZone,
    places,
  }: ReturnNote & { currency: string; timeZone: string; places: Readonly<Record<string, string>> },
): ReturnNoteView {
  const number = returnNoteNumber(note.number);
  const waiting = units.filter(({ place }) => place === 'to-return').length;
  return {
    title: number,
    head: {
      title: `Return note ${number}`,
      lead: note.handedOverAt
        ? `It left on ${dateTimeText(note.handedOverAt, timeZone)}: ${note.evidence}.`
        : `${waiting} of ${units.length} for ${note.supplier.name} wait for the driver.`,
      rest: note.handedOverAt
        ? `${note.supplier.name} owes the credit.`
        : 'Print it, put it into the box, and have it signed when it leaves.',
      actions: [{ href: urls.returnNotePdf(note.id), label: 'Print the return note', main: note.handedOverAt === null }],
    },
    units: units.map((unit) => ({
      href: urls.unit(unit.id),
      label: unit.label,
      what: `${unit.variant.partNumber}, ${unit.variant.name}`,
      place: places[unit.place] ?? unit.place,
      open: moneyText(unit.openNet, currency),
      back: unit.returnBy ? plainDate(unit.returnBy) : '',
    })),
    handOver:
      note.handedOverAt || waiting === 0
        ? undefined
        : {
            action: `${urls.returnNote(note.id)}/hand-over`,
            fields: formFields(form, [
              {
                name: 'evidence',
                label: 'Signed by, or tracking number',
                required: true,
                maxlength: 120,
                autocomplete: 'off',
                hint: 'Without it nobody can prove that they left.',
              },
            ]),
          },
    errors: form.summary,
  };
}
