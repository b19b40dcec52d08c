import { stepsOf } from '../template/steps-of.ts';
import { type Template } from '../template/template.ts';
import { type CardSetting, type CardState } from './card-state.ts';
import { deriveStep } from './derive-step.ts';
import { settleCard } from './settle-card.ts';

const NO_FACTS = {
  numbers: {},
  choices: {},
  levels: {},
  lists: {},
  fills: [],
  filledProductL: 0,
  filledWaterL: 0,
  filledKeptL: 0,
  filledL: 0,
  jugsPoured: 0,
  torques: [],
  variant: null,
};

/**
 * A card on which nothing has been done yet.
 *
 * @param template The job's template
 * @param setting One-person site or not; the stage the desk has the job at (default: expected)
 * @returns The card with every step open and every hold point shut
 * @example emptyCard(THERMOSTAT_JOB).stage // 'expected'
 */
export function emptyCard(template: Template, setting: Partial<CardSetting> = {}): CardState {
  const steps = Object.fromEntries(stepsOf(template).map((step) => [step.key, deriveStep(step, 0, [])]));
  return settleCard({
    template,
    setting: { onePersonSite: setting.onePersonSite ?? false, startStage: setting.startStage ?? 'expected' },
    steps,
    history: [],
    received: [],
    differences: [],
    stage: 'expected',
    isOpened: false,
    holds: {},
    facts: NO_FACTS,
    waits: [],
    debts: [],
    findings: [],
    workTimes: [],
    checks: [],
  });
}
