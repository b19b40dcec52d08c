import { poundFeetToNewtonMetres } from '#libs/units';
import { type TorqueEntry } from './evidence-value.ts';
import { ANY_THREAD, THREAD_RANGES } from './thread-ranges.ts';

export interface TorqueContext {
  /** Whether this value has been used before in this workshop for this fastener. */
  readonly usedBefore?: boolean;
  /** Days until the wrench's calibration is due; negative when it is overdue. */
  readonly calibrationDueInDays?: number;
}

const INCHES_PER_FOOT = 12;
const UNITS = ['Nm', 'lbf·ft', 'lbf·in'] as const;

/**
 * Doubts about a torque entry: a likely slip of unit, a value used for the first time, a wrench past its calibration.
 * They warn and never block; the manual's value is the value.
 *
 * @param entry The entry as typed
 * @param context What the workshop knows beside it
 * @returns Warnings in words, empty when there is nothing to say
 * @example torqueWarnings({ setAt: 90, unit: 'Nm', tightened: 2, of: 2, inSequence: true, document: 'D', page: '4', thread: 'M6', then: null })
 * // ['90 Nm is outside what M6 usually takes (4 to 15 Nm): check the entry. 90 lbf·in would be 10.2 Nm: is the unit right?']
 */
export function torqueWarnings(entry: TorqueEntry, context: TorqueContext = {}): readonly string[] {
  const warnings = [rangeWarning(entry)];
  if (context.usedBefore === false) warnings.push('First time this value is used here: have a second look at the manual.');
  if (context.calibrationDueInDays !== undefined && context.calibrationDueInDays < 0) {
    warnings.push(`The wrench's calibration is ${-context.calibrationDueInDays} days overdue.`);
  }
  return warnings.filter((warning) => warning !== null);
}

/**
 * A torque in newton metres whatever unit the manual prints.
 *
 * @param value The figure
 * @param unit The unit as printed
 * @returns Nm
 * @example torqueInNm(90, 'lbf·in') // 10.168634…
 */
export function torqueInNm(value: number, unit: TorqueEntry['unit']): number {
  if (unit === 'Nm') return value;
  return poundFeetToNewtonMetres(unit === 'lbf·ft' ? value : value / INCHES_PER_FOOT);
}

function rangeWarning({ setAt, unit, thread }: TorqueEntry): string | null {
  const known = thread !== null && Object.hasOwn(THREAD_RANGES, thread) ? THREAD_RANGES[thread] : undefined;
  const range = known ?? ANY_THREAD;
  const fits = (nm: number): boolean => nm >= range.lowNm && nm <= range.highNm;
  if (fits(torqueInNm(setAt, unit))) return null;
  const what = known ? `${thread}` : 'a cooling-system fastener';
  const doubt = `${setAt} ${unit} is outside what ${what} usually takes (${range.lowNm} to ${range.highNm} Nm): check the entry.`;
  const other = UNITS.find((one) => one !== unit && fits(torqueInNm(setAt, one)));
  if (!other) return doubt;
  return other === 'Nm'
    ? `${doubt} ${setAt} Nm would be usual: is the unit right?`
    : `${doubt} ${setAt} ${other} would be ${torqueInNm(setAt, other).toFixed(1)} Nm: is the unit right?`;
}
