import { COLD_REASON_WORDS, COLD_REASONS, PASS_REASON_WORDS, PASS_REASONS, type Step, type StepState } from '#libs/checklist';
import type { CardPage, FoldView } from './card-view.types.ts';
import { fieldPart, foldedForm, platesView, tickPart } from './card-form.ts';
import { presentRemarks } from './present-remarks.ts';
import { UNDOABLE } from './undoable.ts';

/** What can be said of a step beside doing it. Each opens at a tap, and by itself when it came back with an error. */
export function presentFolds(page: CardPage, step: Step, state: StepState): FoldView[] {
  return [
    ...passWithout(page, step, state),
    ...notHere(page, step, state),
    ...takeBack(page, step, state),
    ...letGo(page, step),
    ...presentRemarks(page, step),
  ];
}

const isOpen = ({ state }: StepState): boolean => state === 'open' || state === 'taken-back';

function passWithout(page: CardPage, step: Step, state: StepState): FoldView[] {
  const isSpent = step.hold !== undefined && page.state.holds[step.hold]?.spent === true;
  if (step.hold === undefined || !(isOpen(state) || isSpent)) return [];
  if (step.hold === 'safe-to-open') return openWarm(page, step);
  const name = 'without';
  return [
    foldedForm(page, 'Pass it without: say why', {
      name,
      act: 'without',
      place: step.key,
      parts: [
        { words: 'One tap passes it; the owner sees each of these.' },
        fieldPart(page, name, { name: 'withoutWords', label: 'In words', maxlength: 500, optional: true }),
      ],
      buttons: PASS_REASONS.map((reason) => ({ label: PASS_REASON_WORDS[reason], name: 'reason', value: reason, look: '' })),
    }),
  ];
}

/** A warm engine is opened by two people who say why, never under pressure, and never by one alone. */
function openWarm(page: CardPage, step: Step): FoldView[] {
  if (page.state.setting.onePersonSite) return [];
  const name = 'without';
  const others = [...page.names].filter(([id]) => id !== page.staff.staffId);
  return [
    foldedForm(page, 'Can’t be measured: say why', {
      name,
      act: 'without',
      place: step.key,
      parts: [
        {
          plates: platesView(page, name, {
            legend: 'What stands in the way',
            name: 'reason',
            required: true,
            options: COLD_REASONS.map((reason) => ({ value: reason, label: COLD_REASON_WORDS[reason] })),
          }),
        },
        tickPart(page, name, {
          name: 'noPressure',
          legend: 'Pressure',
          label: 'Certain: no pressure',
          note: 'with pressure it stays shut, whatever the reason',
        }),
        fieldPart(page, name, {
          name: 'second',
          label: 'The second person who stands here',
          required: true,
          options: [{ value: '', label: 'Choose' }, ...others.map(([id, label]) => ({ value: id, label }))],
        }),
        fieldPart(page, name, {
          name: 'withoutWords',
          label: 'Why it can be opened all the same',
          lines: 2,
          maxlength: 500,
          required: true,
        }),
      ],
      buttons: [{ label: 'Open it without a cold reading', look: 'lose big whole' }],
    }),
  ];
}

function notHere(page: CardPage, step: Step, state: StepState): FoldView[] {
  const isKeys = page.state.template.stageMarks.some((mark) => mark.stage === 'keys-out' && mark.steps.includes(step.key));
  const isOwed = step.debt !== undefined && page.state.stage === 'keys-out';
  if (step.hold !== undefined || isKeys || isOwed || !isOpen(state)) return [];
  const name = 'not-here';
  return [
    foldedForm(page, 'Not on this car', {
      name,
      act: 'not-here',
      place: step.key,
      parts: [fieldPart(page, name, { name: 'notHere', label: 'Why it doesn’t fit this car', maxlength: 300, required: true })],
      buttons: [{ label: 'Leave it out on this car', look: '' }],
    }),
  ];
}

function takeBack(page: CardPage, step: Step, state: StepState): FoldView[] {
  const live = state.history.filter((entry) => entry.round === state.round && !entry.takenBack && UNDOABLE.has(entry.kind));
  if (live.length === 0) return [];
  const name = 'take-back';
  return [
    foldedForm(page, 'Take back', {
      name,
      act: 'take-back',
      place: step.key,
      parts: [
        fieldPart(page, name, {
          name: 'takenBackWhy',
          label: 'Why',
          maxlength: 300,
          optional: true,
          hint: 'Not asked for within 30 seconds. Later, or where work behind a hold point is done already, it is needed.',
        }),
      ],
      buttons: [{ label: live.length > 1 ? 'Take the last entry back' : 'Take it back', look: '' }],
    }),
  ];
}

function letGo(page: CardPage, step: Step): FoldView[] {
  const isOwed = page.state.debts.some((debt) => debt.step === step.key && debt.state === 'open');
  if (!isOwed || page.staff.role !== 'owner') return [];
  const name = 'let-go';
  return [
    foldedForm(page, 'Let it go', {
      name,
      act: 'let-go',
      place: step.key,
      parts: [fieldPart(page, name, { name: 'letGo', label: 'Why nobody will do this any more', maxlength: 300, required: true })],
      buttons: [{ label: 'Let it go', look: 'lose' }],
    }),
  ];
}
