import { type Stage, stageRank } from '../stages/stages.ts';
import { type StageMark, type Template } from '../template/template.ts';
import { fieldsOf } from '../words/fields.ts';
import { type HistoryEntry, type StepState } from './card-state.ts';
import { isComplete } from './derive-step.ts';

type Steps = Readonly<Record<string, StepState>>;

interface Event {
  readonly order: number;
  readonly stage: Stage;
  readonly isGoingBack: boolean;
}

/**
 * Where the job is: the stage marks in the order their steps were done, and the times it went back.
 * Going back to 'opened' is only announced: the stage changes when the system is really opened again.
 */
export function deriveStage(
  template: Template,
  steps: Steps,
  { history, startStage }: { history: readonly HistoryEntry[]; startStage: Stage },
): { readonly stage: Stage; readonly isOpened: boolean } {
  const events = [...template.stageMarks.flatMap((mark) => marksOf(mark, steps)), ...history.flatMap(backOf)];
  events.sort((a, b) => a.order - b.order);
  let stage = startStage;
  let isOpened = false;
  let announced: Stage | null = null;
  for (const event of events) {
    if (stage === 'keys-out') break;
    if (event.isGoingBack && event.stage === 'opened') {
      announced = event.stage;
    } else if (event.isGoingBack || event.stage === announced || leadsOn(stage, event.stage)) {
      stage = event.stage;
      announced = null;
    }
    isOpened ||= stageRank(stage) >= stageRank('opened') && stage !== 'keys-out' && stage !== 'fell-through';
  }
  return { stage, isOpened };
}

/** Later steps lead on, also over one that was not ticked; but nothing settles that has not been run hot. */
function leadsOn(from: Stage, to: Stage): boolean {
  if ((to === 'settling' || to === 'settled') && stageRank(from) < stageRank('run-hot')) return false;
  return stageRank(to) > stageRank(from);
}

function marksOf(mark: StageMark, steps: Steps): readonly Event[] {
  const found = mark.steps.flatMap((key) => steps[key] ?? []);
  const orders = found.flatMap((step) => step.completions);
  if (mark.when === 'any') return orders.map((order) => ({ order, stage: mark.stage, isGoingBack: false }));
  const isAll = found.length === mark.steps.length && found.every((step) => isComplete(step.state));
  if (!isAll) return [];
  const order = Math.max(...found.map((step) => step.completions.at(-1) ?? -1));
  return [{ order, stage: mark.stage, isGoingBack: false }];
}

function backOf(entry: HistoryEntry): readonly Event[] {
  if (entry.kind !== 'go-back' || entry.takenBack !== null) return [];
  return [{ order: entry.order, stage: fieldsOf(entry.value)['to'] === 'filled' ? 'filled' : 'opened', isGoingBack: true }];
}
