import { torqueWarnings } from '../evidence/torque-warnings.ts';
import { type CardFacts, type StepState } from './card-state.ts';
import { type Template } from '../template/template.ts';
import { stepsOf } from '../template/steps-of.ts';

/** Doubts that a person should look at; none of them holds anything up. */
export function deriveChecks(template: Template, steps: Readonly<Record<string, StepState>>, facts: CardFacts): readonly string[] {
  return [...facts.torques.flatMap((entry) => torqueWarnings(entry)), ...drainChecks(facts), ...stopWords(template, steps)];
}

function drainChecks({ numbers }: CardFacts): readonly string[] {
  const drained = numbers['drainedL']?.value;
  const kept = numbers['keptL']?.value;
  const waste = numbers['wasteL']?.value;
  const booked = numbers['wasteBookedL']?.value;
  const checks: string[] = [];
  if (drained !== undefined && kept !== undefined && kept > drained) {
    checks.push(`More kept (${kept} L) than was drained (${drained} L): correct one of the two.`);
  }
  if (waste !== undefined && booked !== undefined && Math.abs(waste - booked) > 1e-9) {
    checks.push(`Into the drum: ${booked} L, but drained less kept is ${waste} L.`);
  }
  return checks;
}

/** Answers that end the card's work on the car, such as a hybrid or an electric car. */
export function stopWords(template: Template, steps: Readonly<Record<string, StepState>>): readonly string[] {
  return stepsOf(template).flatMap((step) => {
    const value = steps[step.key]?.value;
    if (step.evidence.kind !== 'choice' || value?.kind !== 'choice') return [];
    return step.evidence.options.find((option) => option.key === value.choice)?.stops ?? [];
  });
}
