import { type Action, applyAction, type CardState, findStep, foldCard } from '#libs/checklist';
import { gatherFigures } from '../../src/features/job-cards/card-figures/gather-figures.ts';
import type { CardPage } from '../../src/features/job-cards/card-page/card-view.types.ts';
import { leadingStep } from '../../src/features/job-cards/card-page/leading-step.ts';
import type { DeviceFacts, Holder, StoredSheet } from './device-types.ts';

/** A card on the tablet: as the server had it, with what was done here since. */
export interface LocalCard {
  readonly sheet: StoredSheet;
  readonly state: CardState;
}

/** Folds the sheet, then what waits: an action that is on the sheet already came back from the server and counts once. */
export function openSheet(sheet: StoredSheet, waiting: readonly Action[], onePersonSite: boolean): LocalCard {
  const known = new Set(sheet.actions.map(({ id }) => id));
  const actions = [...sheet.actions, ...waiting.filter(({ id }) => !known.has(id))];
  const startStage = sheet.row.startStage as CardState['setting']['startStage'];
  return { sheet, state: foldCard(sheet.row.definition, actions, { onePersonSite, startStage }) };
}

export const withAction = ({ sheet, state }: LocalCard, action: Action): LocalCard => ({ sheet, state: applyAction(state, action) });

/** What the presenter of the server's page asks for, from what the tablet has. `stepKey` null: the step to do next. */
export function pageOfCard(
  { sheet, state }: LocalCard,
  {
    device,
    holder,
    stepKey,
    now,
    formState,
  }: { device: DeviceFacts; holder: Holder | null; stepKey: string | null; now: Date; formState: CardPage['formState'] },
): CardPage {
  const person = device.people.find(({ id }) => id === holder?.staffId);
  const known = { ...sheet.known, facts: sheet.known.facts.map((fact) => ({ ...fact, enteredAt: new Date(fact.enteredAt) })) };
  return {
    row: sheet.row,
    state,
    step: (stepKey === null ? null : findStep(state.template, stepKey)) ?? leadingStep(state),
    figures: gatherFigures(state, known),
    names: new Map(device.people.map(({ id, displayName }) => [id, displayName])),
    staff: { staffId: person?.id ?? '', role: person?.role ?? 'technician' },
    now,
    timeZone: device.timeZone,
    lastReceived: sheet.lastReceived === null ? null : new Date(sheet.lastReceived),
    formState,
  };
}
