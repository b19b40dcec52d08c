import { fieldsOf, oneOf, textOrNull } from '../words/fields.ts';
import { type CardState, type Finding, type HistoryEntry } from './card-state.ts';
import { deriveChecks } from './derive-checks.ts';
import { deriveDebts } from './derive-debts.ts';
import { deriveFacts } from './derive-facts.ts';
import { deriveHolds } from './derive-holds.ts';
import { deriveStage } from './derive-stage.ts';
import { deriveWaits } from './derive-waits.ts';
import { deriveWorkTimes } from './derive-work-times.ts';

/** Works everything out again that follows from the histories: holds, stage, figures, waits, debts. */
export function settleCard(card: CardState): CardState {
  const { template, steps, history, setting } = card;
  const { stage, isOpened } = deriveStage(template, steps, { history, startStage: setting.startStage });
  const facts = deriveFacts(template, steps);
  const all = [...history, ...Object.values(steps).flatMap((step) => step.history)];
  return {
    ...card,
    stage,
    isOpened,
    facts,
    holds: deriveHolds(template, steps),
    waits: deriveWaits(template, steps, { history: all, stage }),
    debts: deriveDebts(template, steps, { stage, isOpened, facts }),
    findings: all.flatMap(toFinding),
    workTimes: deriveWorkTimes(all),
    checks: deriveChecks(template, steps, facts),
  };
}

function toFinding(entry: HistoryEntry): readonly Finding[] {
  if (entry.kind !== 'finding' || entry.takenBack !== null) return [];
  const fields = fieldsOf(entry.value);
  const severity = oneOf(fields['severity'], ['now', 'soon', 'watch'] as const, 'Severity');
  const words = textOrNull(fields['words']);
  if (!severity.ok || words === null) return [];
  const { actionId, step, by, readAt } = entry;
  return [{ actionId, step, words, severity: severity.value, photo: textOrNull(fields['photo']), by, readAt }];
}
