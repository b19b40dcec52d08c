import { type ConformanceVerdict } from '../conformance/conformance.types.ts';
import { GUARD_FACTOR, ROUNDING_SLACK } from '../conformance/guard-band.ts';

/**
 * Whether a figure is at least a limit, guard-banded on one side: proven when it lies above by 1.645 u, proven not when below
 * by as much.
 *
 * @param measured - in the unit of the limit
 * @param limit - lowest allowed
 * @param standardUncertainty - of the instrument; 0 compares plainly
 * @example atLeast({ measured: 8.2, limit: 8, standardUncertainty: 0.1 }) // 'conforms'
 */
export function atLeast({
  measured,
  limit,
  standardUncertainty,
}: {
  readonly measured: number;
  readonly limit: number;
  readonly standardUncertainty: number;
}): ConformanceVerdict {
  const slack = ROUNDING_SLACK * Math.max(Math.abs(measured), Math.abs(limit));
  const guard = GUARD_FACTOR * standardUncertainty;
  if (measured - limit >= guard - slack) return 'conforms';
  return limit - measured >= guard - slack ? 'does-not-conform' : 'not-proven';
}

/**
 * Whether a figure is at most a limit: {@link atLeast} the other way round.
 *
 * @example atMost({ measured: 95.5, limit: 95, standardUncertainty: 0.5 }) // 'not-proven'
 */
export function atMost({
  measured,
  limit,
  standardUncertainty,
}: {
  readonly measured: number;
  readonly limit: number;
  readonly standardUncertainty: number;
}): ConformanceVerdict {
  return atLeast({ measured: -measured, limit: -limit, standardUncertainty });
}
