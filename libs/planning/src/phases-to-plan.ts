import { type Phase, SAFE_TO_OPEN_LIMIT_C, type Template } from '#libs/checklist';
import { type ColdEnough, type PlanPhase } from './plan-types.ts';

const MINUTE_MS = 60_000;

/** A level is only right this near to the air. Common practice, no source. */
const LEVEL_ABOVE_AIR_K = 8;

/**
 * A template's phases as the planner takes them: lengths, places, attendance; cold before it is opened and before the last top-up,
 * near the air before the level is read; a car with its system opened stays put.
 *
 * @param template The job's template
 * @param probeU The ± of the thermometer at hand, K: the limit is reached with it added
 * @returns Phases to plan, in order
 * @example phasesToPlan(THERMOSTAT_JOB, 2).find((phase) => phase.key === 'opening')?.coldEnough // { belowC: 48 }
 */
export function phasesToPlan({ phases }: Template, probeU: number): readonly PlanPhase[] {
  return phases.map((phase) => {
    const cold = coldFor(phase, probeU);
    return {
      key: phase.key,
      durationMs: phase.minutes * MINUTE_MS,
      place: phase.place,
      attendance: phase.attendance,
      endsHot: phase.engine === 'running',
      staysPut: phase.stageAfter === 'opened',
      ...(cold ? { coldEnough: cold } : {}),
    };
  });
}

function coldFor({ steps }: Phase, probeU: number): ColdEnough | null {
  const isFilledAt = (fill: string): boolean => steps.some(({ evidence }) => 'fill' in evidence && evidence.fill === fill);
  if (isFilledAt('next-morning')) return { aboveAirK: LEVEL_ABOVE_AIR_K };
  if (isFilledAt('after-run-hot') || steps.some(({ hold }) => hold === 'safe-to-open')) return { belowC: SAFE_TO_OPEN_LIMIT_C - probeU };
  return null;
}
