import { timeUntil } from './cooling.ts';
import { earliestSlot, firstClash } from './phase-start.ts';
import { type EngineHeat, type Plan, type PlannedPhase, type PlanPhase, type PlanRequest, type Window } from './plan-types.ts';

interface Progress {
  readonly readyMs: number;
  readonly engine: EngineHeat;
  readonly done: readonly PlannedPhase[];
}

interface Refusal {
  readonly phase: string;
  readonly why: string;
}

/**
 * The earliest plan for one job: its phases in order, inside opening hours, where a place and a pair of hands are free, the engine
 * cold enough where it has to be. A car that can't be moved keeps its place in between. What is planned is a promise to aim at;
 * what happened is recorded as it happened.
 *
 * @param request Phases, opening hours, what is busy, how warm the engine is; instants in ms
 * @throws RangeError when a temperature is outside −60 to 200 °C or the time constant outside 1 to 10,000 min
 * @returns When, where and by whom each phase; or which phase fits nowhere, and why
 * @example earliestPlan({ phases: [{ key: 'open', durationMs: 60, place: 'bay', attendance: 'hands-on' }], earliestMs: 0,
 *   openings: [{ fromMs: 100, toMs: 500 }], places: [{ id: 'b1', kind: 'bay', busy: [] }], people: [{ id: 'jory', busy: [] }],
 *   engine: { airC: 15, timeConstantMs: 7_200_000, tempC: 15, atMs: 0, hotC: 90 } })
 * // { ok: true, phases: [{ key: 'open', fromMs: 100, toMs: 160, placeId: 'b1', personId: 'jory' }], endsMs: 160 }
 */
export function earliestPlan(request: PlanRequest): Plan {
  const problem = firstProblem(request);
  if (problem) return { ok: false, ...problem };
  let progress: Progress = { readyMs: request.earliestMs, engine: request.engine, done: [] };
  for (const block of blocksOf(request.phases)) {
    const next = earliestBlock(block, progress, request);
    if ('why' in next) return { ok: false, ...next };
    progress = next;
  }
  return { ok: true, phases: progress.done, endsMs: progress.readyMs };
}

/** Phases between which the car can't be moved belong together: one place for all of them. */
function blocksOf(phases: readonly PlanPhase[]): readonly (readonly PlanPhase[])[] {
  const blocks: PlanPhase[][] = [];
  phases.forEach((phase, i) => {
    if (i > 0 && phases[i - 1]?.staysPut === true) blocks.at(-1)?.push(phase);
    else blocks.push([phase]);
  });
  return blocks;
}

function earliestBlock(block: readonly PlanPhase[], before: Progress, request: PlanRequest): Progress | Refusal {
  const kind = block.find((phase) => phase.place !== 'anywhere')?.place;
  if (kind === undefined) return runBlock(block, before, request);
  const places = request.places.filter((place) => place.kind === kind);
  const tries = places.map((place) => blockInPlace(block, before, { request, place }));
  const plans = tries.filter((one) => 'done' in one);
  const best = plans.reduce<Progress | null>((now, plan) => (now === null || plan.readyMs < now.readyMs ? plan : now), null);
  const refusal = tries.find((one) => 'why' in one);
  return best ?? refusal ?? { phase: block[0]?.key ?? '', why: `There is no ${kind} to plan with.` };
}

/** Starting later never ends earlier, so after a clash the first start worth trying is the end of what is in the way. */
function blockInPlace(
  block: readonly PlanPhase[],
  before: Progress,
  { request, place }: { readonly request: PlanRequest; readonly place: PlanRequest['places'][number] },
): Progress | Refusal {
  let fromMs = before.readyMs;
  for (;;) {
    const plan = runBlock(block, before, { ...request, earliestMs: fromMs });
    if ('why' in plan) return plan;
    const own = plan.done.slice(before.done.length);
    const clash = firstClash({ fromMs: own[0]?.fromMs ?? fromMs, toMs: plan.readyMs }, place.busy);
    if (!clash) return { ...plan, done: [...before.done, ...own.map((phase) => ({ ...phase, placeId: place.id }))] };
    fromMs = clash.toMs;
  }
}

/** The phases one after another, none before the request's earliest instant. */
function runBlock(block: readonly PlanPhase[], before: Progress, request: PlanRequest): Progress | Refusal {
  let { readyMs, engine } = before;
  const done = [...before.done];
  for (const phase of block) {
    const coldMs = coldFrom(phase, engine);
    if (coldMs === null) return { phase: phase.key, why: 'In this air the engine never gets cold enough for it.' };
    const waited = done.length > 0 ? readyMs + (phase.waitBeforeMs ?? 0) : readyMs;
    const slot = earliestSlot(phase, Math.max(waited, request.earliestMs, coldMs, phase.notBeforeMs ?? -Infinity), request);
    if (!slot) return { phase: phase.key, why: 'No opening is long enough with somebody free: plan further ahead, or free somebody.' };
    done.push({ key: phase.key, fromMs: slot.fromMs, toMs: slot.toMs, placeId: null, personId: slot.personId });
    readyMs = slot.toMs;
    if (phase.endsHot === true) engine = { ...engine, tempC: engine.hotC, atMs: slot.toMs };
  }
  return { readyMs, engine, done };
}

/** From when the engine is cold enough: since its last reading, or since it was last run hot. */
function coldFrom({ coldEnough }: PlanPhase, { airC, timeConstantMs, tempC, atMs }: EngineHeat): number | null {
  if (!coldEnough) return -Infinity;
  const targetC = 'belowC' in coldEnough ? coldEnough.belowC : airC + coldEnough.aboveAirK;
  const waitMs = timeUntil({ startC: tempC, airC, timeConstantMs }, targetC);
  return waitMs === null ? null : atMs + Math.ceil(waitMs);
}

function firstProblem({ phases, openings, places, people, earliestMs, engine }: PlanRequest): Refusal | null {
  const windows = [...openings, ...places.flatMap(({ busy }) => busy), ...people.flatMap(({ busy }) => busy)];
  const isWindow = ({ fromMs, toMs }: Window): boolean => Number.isFinite(fromMs) && Number.isFinite(toMs) && fromMs < toMs;
  if (!windows.every(isWindow)) return { phase: '', why: 'A time ends before it begins: correct it.' };
  if (![earliestMs, engine.airC, engine.tempC, engine.atMs, engine.hotC].every(Number.isFinite))
    return { phase: '', why: 'A time or temperature to plan from is missing.' };
  if (!(engine.timeConstantMs > 0)) return { phase: '', why: 'The time constant of cooling has to be more than nothing.' };
  const bad = phases.find(({ durationMs, waitBeforeMs = 0 }) => !(durationMs > 0 && Number.isFinite(durationMs) && waitBeforeMs >= 0));
  if (bad) return { phase: bad.key, why: 'A phase needs a length above nothing and no negative wait.' };
  const split = blocksOf(phases).find((block) => new Set(block.map(({ place }) => place).filter((place) => place !== 'anywhere')).size > 1);
  return split
    ? { phase: split[0]?.key ?? '', why: "The car can't be moved in between, but the next phase wants another kind of place." }
    : null;
}
