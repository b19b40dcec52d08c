export { type Standing, tempAfter, timeUntil } from './cooling.ts';
export { earliestPlan } from './earliest-plan.ts';
export { type CoolingRun, learnCooling, type LearntCooling } from './learn-cooling.ts';
export { phasesToPlan } from './phases-to-plan.ts';
export type { ColdEnough, EngineHeat, PlaceKind, Plan, PlannedPhase, PlanPhase, PlanRequest, Window } from './plan-types.ts';
