import { judgeEvidence } from '../evidence/judge-evidence.ts';
import { fieldsOf, textOrNull } from '../words/fields.ts';
import { type Step } from '../template/template.ts';
import { type HistoryEntry, type StepState, type StepStatus } from './card-state.ts';

interface Standing {
  readonly state: StepStatus;
  readonly entry: HistoryEntry | null;
  readonly why: string | null;
}

const OPEN: Standing = { state: 'open', entry: null, why: null };

export function isComplete(state: StepStatus): boolean {
  return state === 'done' || state === 'passed' || state === 'passed-without';
}

export function isEvidence(entry: HistoryEntry): boolean {
  return entry.kind === 'tick' || entry.kind === 'record' || entry.kind === 'pass';
}

/** How a step stands, from its history alone: taken-back entries don't count, rounds are kept apart. */
export function deriveStep(step: Step, round: number, history: readonly HistoryEntry[]): StepState {
  const live = history.filter((entry) => entry.round === round);
  const { state, entry, why } = standing(step, live);
  const completions = rounds(history).flatMap((one) => {
    const then = standing(
      step,
      history.filter((h) => h.round === one),
    );
    return then.entry && isComplete(then.state) ? [then.entry.order] : [];
  });
  return {
    key: step.key,
    state,
    value: entry?.evidence ?? null,
    by: entry?.by ?? null,
    readAt: entry?.readAt ?? null,
    actionId: entry?.actionId ?? null,
    why,
    round,
    history,
    completions,
  };
}

function rounds(history: readonly HistoryEntry[]): readonly number[] {
  return [...new Set(history.map((entry) => entry.round))];
}

function standing(step: Step, entries: readonly HistoryEntry[]): Standing {
  const live = entries.filter((entry) => entry.takenBack === null);
  const set = live.find((entry) => entry.kind === 'let-go' || entry.kind === 'not-applicable');
  if (set)
    return { state: set.kind === 'let-go' ? 'let-go' : 'not-applicable', entry: set, why: textOrNull(fieldsOf(set.value)['reason']) };
  const now = step.hold === undefined ? ordinary(step, live) : holdPoint(step, live);
  if (now.entry !== null) return now;
  return entries.some((entry) => entry.takenBack && (isEvidence(entry) || entry.kind === 'pass-without'))
    ? { ...OPEN, state: 'taken-back' }
    : OPEN;
}

/** The first evidence stands; the same said again agrees with it, anything else never got into the history. */
function ordinary(step: Step, live: readonly HistoryEntry[]): Standing {
  const first = live.find((entry) => isEvidence(entry) || (step.evidence.kind === 'timer' && entry.kind === 'stop-timer'));
  return first ? { state: 'done', entry: first, why: null } : OPEN;
}

/**
 * The latest evidence of a hold point counts, so that a later bad reading shuts it. A reading dated before a bad one never
 * opens it, even when it arrives later: tablets come back from the back bay in any order and clocks can be wrong.
 */
function holdPoint(step: Step, live: readonly HistoryEntry[]): Standing {
  let now = OPEN;
  let lastBad = -Infinity;
  for (const entry of live) {
    const at = Date.parse(entry.readAt);
    if (entry.kind === 'pass-without') {
      now = { state: 'passed-without', entry, why: reasonWords(entry) };
    } else if (entry.evidence !== null && isEvidence(entry)) {
      const { passes, why } = judgeEvidence(step, entry.evidence);
      if (!passes) lastBad = Math.max(lastBad, at);
      const isOlder = passes && at < lastBad;
      now = passes && !isOlder ? { state: 'passed', entry, why: why || null } : { state: 'open', entry, why: isOlder ? OLDER : why };
    }
  }
  return now;
}

const OLDER = 'A later reading said otherwise (or a clock is wrong): measure again.';

function reasonWords(entry: HistoryEntry): string | null {
  const fields = fieldsOf(entry.value);
  return [textOrNull(fields['reason']), textOrNull(fields['words'])].filter((text) => text !== null).join(': ') || null;
}
