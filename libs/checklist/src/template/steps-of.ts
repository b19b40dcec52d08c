import { type Stage, STAGES } from '../stages/stages.ts';
import { type Phase, type Step, type Template } from './template.ts';

/** Every step of a template in the order it is shown. */
export function stepsOf(template: Template): readonly Step[] {
  return template.phases.flatMap((phase) => phase.steps);
}

export function findStep(template: Template, key: string): Step | null {
  return stepsOf(template).find((step) => step.key === key) ?? null;
}

export function phaseOf(template: Template, stepKey: string): Phase | null {
  return template.phases.find((phase) => phase.steps.some((step) => step.key === stepKey)) ?? null;
}

/**
 * The stages a template's jobs pass through: those before the card, those its steps bring, and keys out.
 *
 * @param template The template
 * @returns Its stages in the order of the job
 * @example stagesOf(DIAGNOSIS_VISIT) // ['spoken-of', 'expected', 'standing', 'keys-out', 'squared']
 */
export function stagesOf(template: Template): readonly Stage[] {
  const brought = new Set<Stage>(['spoken-of', 'expected', 'squared', ...template.stageMarks.map((mark) => mark.stage)]);
  return STAGES.filter((stage) => brought.has(stage));
}
