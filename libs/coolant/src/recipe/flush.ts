import { formatFigure } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { exactlyOne } from '../checks/exactly-one.ts';
import { refuse, type Grounds, type Outcome, type Warning } from '../outcome.ts';
import { SOURCE } from '../sources.ts';

export interface FlushInput {
  readonly systemVolumeL: number;
  /** What one draining takes out, L. */
  readonly drainedVolumeL: number;
  readonly cycles?: number | undefined;
  /** The share of old coolant that may remain, such as 0.05. */
  readonly maxRemainingFraction?: number | undefined;
}

export interface Flush extends Grounds {
  /** The share of the old coolant left after the cycles, 0 to 1. */
  readonly remainingFraction: number;
  readonly cycles: number;
  /** What stays in the block after the next draining, L: almost all of it the flushing water. */
  readonly leftInBlockL: number;
}

/** Nobody flushes more often; a figure beyond it means that too little comes out at a time. */
const MOST_CYCLES = 100;

/** Cycles until no more than so much remains, when each keeps the share `kept`. */
function cyclesFor(maxRemaining: number, kept: number): number {
  if (maxRemaining >= 1) return 0;
  if (kept <= 0) return 1;
  const cycles = Math.ceil(Math.log(maxRemaining) / Math.log(kept) - 1e-9);
  return Number.isFinite(cycles) ? Math.max(1, cycles) : MOST_CYCLES + 1;
}

function checkFlush(input: FlushInput): ReturnType<typeof checkNumber> {
  const { systemVolumeL, drainedVolumeL, cycles, maxRemainingFraction } = input;
  const problem =
    checkNumber(systemVolumeL, { field: 'systemVolumeL', name: 'The system volume', unit: 'L', least: 0.1, most: 500 }) ??
    checkNumber(drainedVolumeL, { field: 'drainedVolumeL', name: 'The drained volume', unit: 'L', above: 0 }) ??
    exactlyOne({ cycles, maxRemainingFraction }, 'cycles');
  if (problem) return problem;
  if (drainedVolumeL > systemVolumeL) {
    const message = 'More is drained than the system holds. Check both figures.';
    return { code: 'more-than-system', kind: 'impossible', field: 'drainedVolumeL', limit: systemVolumeL, message };
  }
  if (typeof maxRemainingFraction === 'number') {
    const rule = { field: 'maxRemainingFraction', name: 'The share that may remain', unit: '', above: 0, most: 1 };
    return checkNumber(maxRemainingFraction, rule);
  }
  const given = cycles ?? Number.NaN;
  if (Number.isFinite(given) && !Number.isInteger(given)) {
    return { code: 'meaningless-value', kind: 'malformed', field: 'cycles', message: 'The number of cycles must be whole.' };
  }
  return checkNumber(given, { field: 'cycles', name: 'The number of cycles', unit: '', least: 0, most: MOST_CYCLES });
}

/**
 * How much of the old coolant is left after draining and filling with water several times, or how often it takes.
 *
 * Each cycle, run hot with the heater on so that all of it mixes, leaves the share 1 − drained ÷ system of what was
 * there: (1 − D/C)ⁿ after n.
 *
 * @param input Volumes in L, and either the cycles or the share that may remain
 * @example flush({ systemVolumeL: 8, drainedVolumeL: 4, cycles: 3 }) // remainingFraction 0.125
 */
export function flush(input: FlushInput): Outcome<Flush> {
  const problem = checkFlush(input);
  if (problem) return refuse(problem);
  const { systemVolumeL, drainedVolumeL, maxRemainingFraction } = input;
  const kept = 1 - drainedVolumeL / systemVolumeL;
  const cycles = maxRemainingFraction === undefined ? (input.cycles ?? 0) : cyclesFor(maxRemainingFraction, kept);
  if (cycles > MOST_CYCLES) {
    return refuse({
      code: 'outside-published-range',
      kind: 'impossible',
      field: 'maxRemainingFraction',
      limit: kept ** MOST_CYCLES,
      message: `That would take more than ${MOST_CYCLES} cycles. Drain more at a time, or allow more to remain.`,
    });
  }
  const remainingFraction = kept ** cycles;
  const warnings: Warning[] = [];
  if (kept > 0 && cycles > 0) {
    const text =
      `${formatFigure(systemVolumeL - drainedVolumeL, 2)} L of flushing water stay in the block and dilute the last filling: ` +
      `give it more concentrate.`;
    warnings.push({ code: 'flushing-water-stays', text });
  }
  return {
    ok: true,
    remainingFraction,
    cycles,
    leftInBlockL: systemVolumeL - drainedVolumeL,
    assumptions: ['Each cycle is run hot with the heater on, so that old and new mix completely, and drained cold.'],
    warnings,
    sources: [SOURCE.flush],
  };
}
