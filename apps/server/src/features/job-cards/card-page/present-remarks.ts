import { phaseOf, STAGE_MOVES, STAGE_WORDS, type Step, WAIT_KINDS, WAIT_WORDS, WHOLE_CARD } from '#libs/checklist';
import { fieldPart, foldedForm, platesView } from './card-form.ts';
import type { CardPage, FoldView, PartView } from './card-view.types.ts';

/** What can be said at any step, whatever is shut: findings, notes, waits, going back, one's own time. */
export function presentRemarks(page: CardPage, step: Step): FoldView[] {
  return [...remarks(page, step), wait(page), ...goBack(page), ...workTime(page, step)];
}

function remarks(page: CardPage, step: Step): FoldView[] {
  return [
    foldedForm(page, 'Finding', {
      name: 'finding',
      act: 'finding',
      place: step.key,
      takesFiles: true,
      parts: [
        fieldPart(page, 'finding', { name: 'found', label: 'What was found', lines: 2, maxlength: 1000, required: true }),
        {
          plates: platesView(page, 'finding', {
            legend: 'How bad it is',
            name: 'severity',
            bare: true,
            required: true,
            options: [
              { value: 'now', label: 'Now', note: 'not safe or not driveable' },
              { value: 'soon', label: 'Soon' },
              { value: 'watch', label: 'Watch it' },
            ],
          }),
        },
        cameraPart(page, 'finding', { optional: true }),
      ],
      buttons: [{ label: 'Keep the finding', look: '' }],
    }),
    photoFold(page, step),
    foldedForm(page, 'Note', {
      name: 'note',
      act: 'note',
      place: step.key,
      parts: [fieldPart(page, 'note', { name: 'note', label: 'Note', lines: 2, maxlength: 1000, required: true })],
      buttons: [{ label: 'Keep the note', look: '' }],
    }),
  ];
}

function photoFold(page: CardPage, step: Step): FoldView {
  return foldedForm(page, 'Photo', {
    name: 'photo',
    act: 'photo',
    place: step.key,
    takesFiles: true,
    parts: [
      cameraPart(page, 'photo', { required: true }),
      fieldPart(page, 'photo', { name: 'photoWords', label: 'What it shows', maxlength: 300, optional: true }),
    ],
    buttons: [{ label: 'Keep the photo', look: '' }],
  });
}

function cameraPart(page: CardPage, form: string, need: { required: true } | { optional: true }): PartView {
  return fieldPart(page, form, { name: 'photo', label: 'Photo', type: 'file', camera: true, ...need });
}

function wait(page: CardPage): FoldView {
  const name = 'wait';
  return foldedForm(page, 'Something to wait for', {
    name,
    act: 'wait',
    place: WHOLE_CARD,
    parts: [
      fieldPart(page, name, {
        name: 'waitFor',
        label: 'What is waited for',
        required: true,
        options: [{ value: '', label: 'Choose' }, ...WAIT_KINDS.map((kind) => ({ value: kind, label: WAIT_WORDS[kind] }))],
      }),
      fieldPart(page, name, { name: 'waitWords', label: 'In words', maxlength: 300, optional: true }),
      fieldPart(page, name, { name: 'who', label: 'Who acts', maxlength: 100, optional: true }),
      fieldPart(page, name, { name: 'until', label: 'Expected by', type: 'date', optional: true, short: true }),
    ],
    buttons: [{ label: 'The job waits', look: '' }],
  });
}

function goBack(page: CardPage): FoldView[] {
  const moves = STAGE_MOVES.filter(({ kind, from }) => kind === 'back' && from === page.state.stage);
  if (moves.length === 0) return [];
  const name = 'go-back';
  return [
    foldedForm(page, 'The job goes back', {
      name,
      act: 'go-back',
      place: WHOLE_CARD,
      parts: [
        { words: 'Its steps from there on are open once more; what was done stays on record.' },
        fieldPart(page, name, { name: 'backWhy', label: 'Why', maxlength: 300, required: true }),
      ],
      buttons: moves.map(({ to }) => ({ label: `Back to “${STAGE_WORDS[to]}”`, name: 'to', value: to, look: '' })),
    }),
  ];
}

/** A person's own time on a phase. */
function workTime(page: CardPage, step: Step): FoldView[] {
  const phase = phaseOf(page.state.template, step.key);
  if (!phase) return [];
  const isRunning = page.state.workTimes.some(
    (time) => time.step === phase.key && time.by === page.staff.staffId && time.stoppedAt === null,
  );
  return [
    foldedForm(page, isRunning ? `Your time on “${phase.title}” runs` : 'Your time', {
      name: 'time',
      act: isRunning ? 'stop' : 'start',
      place: phase.key,
      buttons: [{ label: `${isRunning ? 'Stop' : 'Start'} your time on “${phase.title}”`, look: '' }],
    }),
  ];
}
