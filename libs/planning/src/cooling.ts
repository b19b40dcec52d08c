import { coolDownTemperature, coolDownTime } from '#libs/coolant';

const MINUTE_MS = 60_000;

/** A shut engine standing in air of one temperature. */
export interface Standing {
  readonly startC: number;
  readonly airC: number;
  readonly timeConstantMs: number;
}

/**
 * How warm a standing engine will be after a time, by Newton's law of cooling. An estimate for the plan: it never replaces measuring.
 *
 * @param standing Temperature now and of the air, °C; time constant, ms
 * @param elapsedMs Time from now, ms
 * @returns °C
 * @throws RangeError when a figure can't mean anything, with the words for it
 * @example tempAfter({ startC: 90, airC: 20, timeConstantMs: 7_200_000 }, 7_200_000) // 45.75…
 */
export function tempAfter(standing: Standing, elapsedMs: number): number {
  const answer = coolDownTemperature(inMinutes(standing), elapsedMs / MINUTE_MS);
  if (answer.ok) return answer.temperatureC;
  throw new RangeError(answer.problem.message);
}

/**
 * How long until a standing engine is down to a temperature, by Newton's law of cooling. An estimate, as above.
 *
 * @param standing Temperature now and of the air, °C; time constant, ms
 * @param targetC Temperature to wait for, °C
 * @returns ms, 0 when it is there already, null when the air is too warm for it ever to get there
 * @throws RangeError when a figure can't mean anything, with the words for it
 * @example timeUntil({ startC: 90, airC: 20, timeConstantMs: 7_200_000 }, 50) // 6100545.5… (1 h 42 min)
 */
export function timeUntil(standing: Standing, targetC: number): number | null {
  const answer = coolDownTime(inMinutes(standing), targetC);
  if (answer.ok) return answer.minutes * MINUTE_MS;
  if (answer.problem.code === 'never-reached') return null;
  throw new RangeError(answer.problem.message);
}

function inMinutes({ startC, airC, timeConstantMs }: Standing): { startC: number; airC: number; timeConstantMin: number } {
  return { startC, airC, timeConstantMin: timeConstantMs / MINUTE_MS };
}
