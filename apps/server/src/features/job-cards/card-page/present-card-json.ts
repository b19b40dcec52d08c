import { canDo, type CardState, type Step } from '#libs/checklist';
import type { CardDto, CardStepDto } from '../dto/card.dto.ts';
import type { CardRow } from '../card-known.ts';
import { namePeople } from '../name-people.ts';

/** A card for a program. */
export function presentCardJson({ row, state, names }: { row: CardRow; state: CardState; names: ReadonlyMap<string, string> }): CardDto {
  const { template, stage, facts, waits, debts, findings } = state;
  const { registration, make, model, engineCode } = row.vehicle;
  const named = (text: string): string => namePeople(text, names);
  return {
    id: row.id,
    number: row.number,
    template: { key: template.key, version: template.version, name: template.name },
    stage: row.stage === 'squared' ? row.stage : stage,
    keyTag: row.keyTag,
    vehicle: { registration, make, model, engineCode },
    steps: template.phases.flatMap((phase) => phase.steps.map((step) => toStep(state, step, { phase: phase.key, named }))),
    holds: state.holds,
    facts,
    differences: state.differences.map(({ actionId, code, why, settled }) => ({
      actionId,
      code,
      why: named(why),
      isSettled: settled !== null,
    })),
    waits: [...waits],
    debts: [...debts],
    findings: [...findings],
    checks: state.checks.map(named),
  };
}

function toStep(state: CardState, step: Step, { phase, named }: { phase: string; named: (text: string) => string }): CardStepDto {
  const own = state.steps[step.key];
  const { can, why } = canDo(state, step.key);
  const said = own?.why ?? (can ? null : why.join(' '));
  return {
    key: step.key,
    title: step.title,
    phase,
    hold: step.hold ?? null,
    state: own?.state ?? 'open',
    value: own?.value ?? null,
    by: own?.by ?? null,
    readAt: own?.readAt ?? null,
    why: said === null ? null : named(said),
    can,
  };
}
