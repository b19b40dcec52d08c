import { type PlanPhase, type PlanRequest, type Window } from './plan-types.ts';

export interface PhaseSlot extends Window {
  readonly personId: string | null;
}

/** The earliest time from an instant on at which a phase fits into the opening hours and somebody's time; null when there is none. */
export function earliestSlot(phase: PlanPhase, readyMs: number, { openings, people }: PlanRequest): PhaseSlot | null {
  if (phase.attendance === 'nobody') return { fromMs: readyMs, toMs: readyMs + phase.durationMs, personId: null };
  if (phase.attendance === 'within-earshot') return asSlot(fit(phase.durationMs, readyMs, { openings, busy: [] }), phase, null);
  const slots = people.flatMap(({ id, busy }) => asSlot(fit(phase.durationMs, readyMs, { openings, busy }), phase, id) ?? []);
  return slots.reduce<PhaseSlot | null>((best, slot) => (best === null || slot.fromMs < best.fromMs ? slot : best), null);
}

/** The first window among them that a stretch of time touches. */
export function firstClash(stretch: Window, busy: readonly Window[]): Window | null {
  return busy.find((window) => window.fromMs < stretch.toMs && stretch.fromMs < window.toMs) ?? null;
}

function asSlot(fromMs: number | null, { durationMs }: PlanPhase, personId: string | null): PhaseSlot | null {
  return fromMs === null ? null : { fromMs, toMs: fromMs + durationMs, personId };
}

/** A phase is not split: it fits whole into one opening, beside everything that is busy. */
function fit(
  durationMs: number,
  readyMs: number,
  { openings, busy }: { readonly openings: readonly Window[]; readonly busy: readonly Window[] },
): number | null {
  let best: number | null = null;
  for (const opening of openings) {
    let fromMs = Math.max(readyMs, opening.fromMs);
    for (let clash = firstClash({ fromMs, toMs: fromMs + durationMs }, busy); clash !== null;) {
      fromMs = clash.toMs;
      clash = firstClash({ fromMs, toMs: fromMs + durationMs }, busy);
    }
    if (fromMs + durationMs <= opening.toMs && (best === null || fromMs < best)) best = fromMs;
  }
  return best;
}
