import { oneOf, fieldsOf, textOrNull } from '../words/fields.ts';
import { stageRank, type Stage } from '../stages/stages.ts';
import { findStep } from '../template/steps-of.ts';
import { type Template } from '../template/template.ts';
import { type HistoryEntry, type StepState, type Wait } from './card-state.ts';
import { WAIT_KINDS } from './waits.ts';

/** Waits that have begun and not ended, oldest first; a reading too warm to open makes one by itself. */
export function deriveWaits(
  template: Template,
  steps: Readonly<Record<string, StepState>>,
  { history, stage }: { history: readonly HistoryEntry[]; stage: Stage },
): readonly Wait[] {
  if (stage === 'keys-out') return [];
  const live = history.filter((entry) => entry.takenBack === null);
  const over = new Set(live.filter((entry) => entry.kind === 'wait-over').map((entry) => fieldsOf(entry.value)['of']));
  const told = live.flatMap((entry) => (entry.kind === 'wait' && !over.has(entry.actionId) ? toWait(entry) : []));
  return [...told, ...coldWaits(template, steps, stage)].sort((a, b) => Date.parse(a.since) - Date.parse(b.since));
}

function toWait(entry: HistoryEntry): readonly Wait[] {
  const fields = fieldsOf(entry.value);
  const kind = oneOf(fields['for'], WAIT_KINDS, 'Wait');
  if (!kind.ok) return [];
  const who = textOrNull(fields['who']) ?? entry.by;
  const { actionId, readAt: since } = entry;
  return [{ kind: kind.value, actionId, since, until: textOrNull(fields['until']), who, words: textOrNull(fields['words']) }];
}

function coldWaits(template: Template, steps: Readonly<Record<string, StepState>>, stage: Stage): readonly Wait[] {
  if (stageRank(stage) >= stageRank('opened') && stage !== 'fell-through') return [];
  return Object.values(steps).flatMap((step) => {
    const isCold = findStep(template, step.key)?.evidence.kind === 'cold-reading';
    if (!isCold || step.state !== 'open' || step.readAt === null) return [];
    return [{ kind: 'cold' as const, actionId: null, since: step.readAt, until: null, who: step.by ?? '', words: step.why }];
  });
}
