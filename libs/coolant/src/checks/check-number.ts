import { formatFigure } from '#libs/units';
import { type Problem } from '../outcome.ts';

/** What a number must be to mean something, and how the message speaks of it. */
export interface NumberRule {
  readonly field: string;
  /** How the message names it, such as "The drained volume". */
  readonly name: string;
  readonly unit: string;
  readonly least?: number;
  readonly above?: number;
  readonly most?: number;
  /** Set where a value beyond the bounds makes sense but isn't covered. */
  readonly isCoverage?: boolean;
}

function inWords(value: number, unit: string): string {
  const decimals = Number.isInteger(value) ? 0 : 2;
  return unit === '' ? formatFigure(value, decimals) : `${formatFigure(value, decimals)} ${unit}`;
}

/**
 * Whether a number can be worked with, and if not, what to say.
 *
 * @param value What was given
 * @param rule Bounds and words
 * @returns The problem, or undefined when there is none
 * @example checkNumber(-1, { field: 'drainedVolumeL', name: 'The drained volume', unit: 'L', least: 0 })?.limit // 0
 */
export function checkNumber(value: number, rule: NumberRule): Problem | undefined {
  const { field, name, unit } = rule;
  if (!Number.isFinite(value)) {
    const inUnit = unit === '' ? '' : ` in ${unit}`;
    return { code: 'not-a-number', kind: 'malformed', field, message: `${name} must be a number${inUnit}.` };
  }
  const code = rule.isCoverage === true ? 'outside-published-range' : 'meaningless-value';
  const kind = rule.isCoverage === true ? 'impossible' : 'malformed';
  if (rule.least !== undefined && value < rule.least) {
    return { code, kind, field, limit: rule.least, message: `${name} must be at least ${inWords(rule.least, unit)}.` };
  }
  if (rule.above !== undefined && value <= rule.above) {
    return { code, kind, field, limit: rule.above, message: `${name} must be more than ${inWords(rule.above, unit)}.` };
  }
  if (rule.most !== undefined && value > rule.most) {
    return { code, kind, field, limit: rule.most, message: `${name} must be at most ${inWords(rule.most, unit)}.` };
  }
  return undefined;
}
