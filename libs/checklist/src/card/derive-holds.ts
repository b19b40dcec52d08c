import { HOLD_KEYS, HOLD_WORDS, type HoldKey } from '../holds/holds.ts';
import { stepsOf } from '../template/steps-of.ts';
import { type Step, type Template } from '../template/template.ts';
import { type HoldState, type StepState } from './card-state.ts';
import { isEvidence } from './derive-step.ts';

type Steps = Readonly<Record<string, StepState>>;

/** A hold point is passed when every step of it is; a cold reading is spent once the engine has run after it. */
export function deriveHolds(template: Template, states: Steps): Readonly<Partial<Record<HoldKey, HoldState>>> {
  const steps = stepsOf(template);
  const holds: Partial<Record<HoldKey, HoldState>> = {};
  for (const key of HOLD_KEYS) {
    const own = steps.filter((step) => step.hold === key);
    if (own.length === 0) continue;
    const hold = fromSteps(key, own, states);
    holds[key] = key === 'safe-to-open' && hold.state !== 'shut' ? orSpent(hold, own, { steps, states }) : hold;
  }
  return holds;
}

export function isOpenHold(hold: HoldState | undefined): boolean {
  return hold !== undefined && hold.state !== 'shut' && !hold.spent;
}

function fromSteps(key: HoldKey, own: readonly Step[], states: Steps): HoldState {
  const found = own.flatMap((step) => states[step.key] ?? []);
  const shut = found.find((step) => step.state !== 'passed' && step.state !== 'passed-without');
  if (shut || found.length < own.length) return { key, state: 'shut', spent: false, why: shut?.why ?? HOLD_WORDS[key].opensBy };
  const without = found.find((step) => step.state === 'passed-without');
  if (without) return { key, state: 'passed-without', spent: false, why: without.why ?? '' };
  return { key, state: 'passed', spent: false, why: found.flatMap((step) => step.why ?? []).join(' ') };
}

function orSpent(hold: HoldState, own: readonly Step[], { steps, states }: { steps: readonly Step[]; states: Steps }): HoldState {
  const measured = Math.max(...own.map((step) => states[step.key]?.completions.at(-1) ?? -1));
  const ran = steps.some((step) => step.runsEngine === true && lastRun(states[step.key]) > measured);
  return ran ? { ...hold, spent: true, why: 'The engine has run since it was measured: measure again before opening.' } : hold;
}

function lastRun(state: StepState | undefined): number {
  const runs = (state?.history ?? []).filter((entry) => !entry.takenBack && (isEvidence(entry) || entry.kind.endsWith('-timer')));
  return Math.max(-1, ...runs.map((entry) => entry.order));
}
