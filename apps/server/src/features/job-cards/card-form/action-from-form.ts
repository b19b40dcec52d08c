import { type ActionKind, COLD_REASONS, PASS_REASONS, type Step, WAIT_KINDS } from '#libs/checklist';
import type { FieldError } from '../../../platform/domain-error.ts';
import { evidenceFromForm } from './evidence-from-form.ts';
import { type TypedFields, TypedForm } from './typed-form.ts';

/** What a form of the card can ask for. `do` is the step's own work, `close` ends a step of jugs. */
const CARD_ACTS = [
  'do',
  'close',
  'pour',
  'start',
  'stop',
  'without',
  'not-here',
  'take-back',
  'note',
  'finding',
  'photo',
  'wait',
  'wait-over',
  'go-back',
  'let-go',
  'settle',
  'confirm',
] as const;

export type CardAct = (typeof CARD_ACTS)[number];

export type FormAction =
  | { readonly ok: true; readonly kind: ActionKind; readonly step: string; readonly value: unknown }
  | { readonly ok: false; readonly errors: readonly FieldError[] };

interface Draft {
  readonly kind: ActionKind;
  readonly value: unknown;
}

/**
 * The action that a form of the card stands for, or what has to change in the form. A hold point's evidence is recorded,
 * never forced: what does not pass it stays on the card as a reading.
 *
 * @param step The step of the form, or the key of a phase or of the whole card
 * @param fields What was typed, by field; `photo`: the id under which the photo of the form is kept
 * @example actionFromForm(step, { act: 'do', litres: '4,6' }) // { ok: true, kind: 'record', step: 'drained', value: { litres: 4.6 } }
 */
export function actionFromForm(step: Step | string, fields: TypedFields): FormAction {
  const form = new TypedForm(fields);
  const act = form.oneOf('act', CARD_ACTS, 'This form asks for nothing the card knows. Reload the page.');
  if (act === undefined) return { ok: false, errors: form.errors };
  const draft = typeof step === 'string' ? cardDraft(act, form) : stepDraft(act, step, form);
  if (form.errors.length > 0) return { ok: false, errors: form.errors };
  return { ok: true, step: typeof step === 'string' ? step : step.key, ...draft };
}

function stepDraft(act: CardAct, step: Step, form: TypedForm): Draft {
  switch (act) {
    case 'do':
      return { kind: step.evidence.kind === 'tick' ? 'tick' : 'record', value: evidenceFromForm(step.evidence, form) };
    case 'close':
      return { kind: 'tick', value: null };
    case 'pour':
      return { kind: 'pour-jug', value: evidenceFromForm(step.evidence, form) };
    case 'start':
      return { kind: 'start-timer', value: null };
    case 'stop':
      return { kind: 'stop-timer', value: null };
    case 'without':
      return { kind: 'pass-without', value: step.hold === 'safe-to-open' ? openedWarm(form) : passedWithout(form) };
    case 'not-here':
      return { kind: 'not-applicable', value: { reason: form.needed('notHere', "Say why it doesn't fit this car.") } };
    case 'let-go':
      return { kind: 'let-go', value: { reason: form.needed('letGo', 'Say why this is let go.') } };
    case 'take-back':
    case 'note':
    case 'finding':
    case 'photo':
    case 'wait':
    case 'wait-over':
    case 'go-back':
    case 'settle':
    case 'confirm':
      return cardDraft(act, form);
  }
}

function cardDraft(act: CardAct, form: TypedForm): Draft {
  switch (act) {
    case 'take-back':
      return { kind: 'take-back', value: takenBack(form) };
    case 'note':
      return { kind: 'note', value: { words: form.needed('note', 'Write the note down first.') } };
    case 'finding':
      return {
        kind: 'finding',
        value: {
          severity: form.oneOf('severity', ['now', 'soon', 'watch'] as const, 'Say how bad it is.'),
          words: form.needed('found', 'Say what was found.'),
          ...photoOf(form),
        },
      };
    case 'photo':
      return {
        kind: 'photo',
        value: { photo: form.needed('photo', 'Take a photo, or choose one, first.'), words: form.text('photoWords') || null },
      };
    case 'wait':
      return { kind: 'wait', value: waitFrom(form) };
    case 'wait-over':
      return { kind: 'wait-over', value: { of: form.text('of') } };
    case 'go-back':
      return {
        kind: 'go-back',
        value: {
          to: form.oneOf('to', ['opened', 'filled'] as const, 'Say where the job goes back to.'),
          reason: form.needed('backWhy', 'Say why the job goes back.'),
        },
      };
    case 'settle':
      return { kind: 'settle-difference', value: { of: form.text('of'), words: form.text('settled') || null } };
    case 'confirm':
      return { kind: 'confirm-name', value: { of: form.text('of') } };
    case 'start':
      return { kind: 'start-timer', value: null };
    case 'stop':
      return { kind: 'stop-timer', value: null };
    case 'do':
    case 'close':
    case 'pour':
    case 'without':
    case 'not-here':
    case 'let-go':
      form.wrong('act', 'This belongs to a step of the card. Reload the page.');
      return { kind: 'note', value: null };
  }
}

/** A finding may show its photo. */
function photoOf(form: TypedForm): { photo?: string } {
  const photo = form.text('photo');
  return photo === '' ? {} : { photo };
}

function takenBack(form: TypedForm): unknown {
  const of = form.text('of');
  return { ...(of === '' ? {} : { of }), reason: form.text('takenBackWhy') || null };
}

function waitFrom(form: TypedForm): unknown {
  const until = form.text('until');
  if (until !== '' && !/^\d{4}-\d\d-\d\d$/.test(until)) form.wrong('until', 'Give the day as year, month and day, or leave it empty.');
  return {
    for: form.oneOf('waitFor', WAIT_KINDS, 'Say what is waited for.'),
    until: until || null,
    who: form.text('who') || null,
    words: form.text('waitWords') || null,
  };
}

function passedWithout(form: TypedForm): unknown {
  return { reason: form.oneOf('reason', PASS_REASONS, 'Choose one of the reasons.'), words: form.text('withoutWords') || null };
}

/** Opening an engine that is not cold by a reading: a second person and why. Pressure is never among the reasons. */
function openedWarm(form: TypedForm): unknown {
  if (!form.isTicked('noPressure')) form.wrong('noPressure', 'Be certain that there is no pressure. For pressure there is no exception.');
  return {
    pressure: 'none',
    reason: form.oneOf('reason', COLD_REASONS, 'Choose what stands in the way of a reading.'),
    second: form.needed('second', 'Name the second person who stands here.'),
    words: form.needed('withoutWords', 'Say why it can be opened all the same.'),
  };
}
