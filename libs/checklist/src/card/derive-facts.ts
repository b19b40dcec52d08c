import { type EvidenceValue, type TorqueEntry } from '../evidence/evidence-value.ts';
import { stepsOf } from '../template/steps-of.ts';
import { type Step, type Template } from '../template/template.ts';
import { type CardFacts, type Fill, type HistoryEntry, type NumberFact, type StepState } from './card-state.ts';
import { isEvidence } from './derive-step.ts';

interface Draft {
  readonly numbers: Record<string, NumberFact>;
  readonly choices: Record<string, { readonly choice: string; readonly asked: Readonly<Record<string, number>> }>;
  readonly levels: Record<string, number | null>;
  readonly lists: Record<string, readonly string[]>;
  readonly fills: Fill[];
  readonly torques: TorqueEntry[];
  jugsPoured: number;
  variant: string | null;
}

/** The card's figures by name. Litres add up over the rounds of a job that went back; readings and choices are the latest. */
export function deriveFacts(template: Template, states: Readonly<Record<string, StepState>>): CardFacts {
  const draft: Draft = { numbers: {}, choices: {}, levels: {}, lists: {}, fills: [], torques: [], jugsPoured: 0, variant: null };
  for (const step of stepsOf(template)) {
    for (const entry of standingEntries(step, states[step.key]?.history ?? [])) {
      if (entry.kind === 'pour-jug') draft.jugsPoured += 1;
      if (entry.evidence !== null) take(draft, step, { entry, evidence: entry.evidence });
    }
  }
  addWaste(draft.numbers);
  return { ...draft, ...totals(draft.fills) };
}

/** Of each round one evidence (the first, or a hold point's last) and every pour. */
function standingEntries(step: Step, history: readonly HistoryEntry[]): readonly HistoryEntry[] {
  const live = history.filter((entry) => entry.takenBack === null);
  const evidence = live.filter(isEvidence);
  const isCounted = (entry: HistoryEntry): boolean => {
    const round = evidence.filter((one) => one.round === entry.round);
    return entry === (step.hold === undefined ? round[0] : round.at(-1));
  };
  return live.filter((entry) => entry.kind === 'pour-jug' || isCounted(entry));
}

function take(draft: Draft, step: Step, { entry, evidence }: { entry: HistoryEntry; evidence: EvidenceValue }): void {
  const spec = step.evidence;
  const name = 'fact' in spec ? spec.fact : step.key;
  const figure = (value: number, unit: string, about = false): NumberFact => ({
    value,
    about,
    unit,
    step: step.key,
    actionId: entry.actionId,
  });
  switch (evidence.kind) {
    case 'reading':
      draft.numbers[name] = figure(evidence.value, spec.kind === 'reading' ? spec.unit : '', evidence.about);
      return;
    case 'cold-reading':
      draft.numbers[name] = figure(evidence.reading.tempC, '°C');
      return;
    case 'litres': {
      const before = draft.numbers[name];
      const about = evidence.about || before?.about === true;
      draft.numbers[name] = figure(toMicrolitres(evidence.litres + (before?.value ?? 0)), 'L', about);
      return;
    }
    case 'level':
      draft.levels[name] = evidence.belowMarkMl;
      if (spec.kind === 'level' && spec.fill === undefined && evidence.belowMarkMl !== null) {
        draft.numbers[name] = figure(evidence.belowMarkMl / 1000, 'L');
      }
      addFill(draft, step, { entry, evidence });
      return;
    case 'fill':
      addFill(draft, step, { entry, evidence });
      return;
    case 'choice':
      draft.choices[name] = { choice: evidence.choice, asked: evidence.asked };
      return;
    case 'list':
      draft.lists[name] = spec.kind === 'list' && spec.returns !== undefined ? evidence.leftOff.map((one) => one.item) : evidence.items;
      return;
    case 'torque':
      draft.torques.push(evidence.entry);
      return;
    case 'variant':
      draft.variant = evidence.variant;
      return;
    case 'tick':
    case 'count':
      return;
  }
}

function addFill(
  draft: Draft,
  step: Step,
  { entry, evidence }: { entry: HistoryEntry; evidence: Extract<EvidenceValue, { kind: 'fill' | 'level' }> },
): void {
  const { productMl, waterMl, keptMl } = evidence.amounts;
  const spec = step.evidence;
  const stage = spec.kind === 'jugs' || spec.kind === 'level' ? spec.fill : undefined;
  if (stage === undefined || productMl + waterMl + keptMl === 0) return;
  const about = evidence.kind === 'fill' && evidence.about;
  const { actionId, by, readAt } = entry;
  draft.fills.push({ stage, step: step.key, productMl, waterMl, keptMl, about, actionId, by, readAt });
}

/** Drained = kept for this car + waste, by definition; more kept than drained is a doubt, not a negative waste. */
function addWaste(numbers: Record<string, NumberFact>): void {
  const drained = numbers['drainedL'];
  const kept = numbers['keptL'];
  if (!drained || !kept || kept.value > drained.value) return;
  const value = toMicrolitres(drained.value - kept.value);
  numbers['wasteL'] = { value, about: drained.about || kept.about, unit: 'L', step: kept.step, actionId: null };
}

function totals(fills: readonly Fill[]): Pick<CardFacts, 'filledProductL' | 'filledWaterL' | 'filledKeptL' | 'filledL'> {
  const sum = (amount: (fill: Fill) => number): number => toMicrolitres(fills.reduce((total, fill) => total + amount(fill), 0) / 1000);
  return {
    filledProductL: sum((fill) => fill.productMl),
    filledWaterL: sum((fill) => fill.waterMl),
    filledKeptL: sum((fill) => fill.keptMl),
    filledL: sum((fill) => fill.productMl + fill.waterMl + fill.keptMl),
  };
}

/** Sums of litres without the dust of binary fractions. */
function toMicrolitres(litres: number): number {
  return Math.round(litres * 1e6) / 1e6;
}
