import { ChartInputError } from './chart-input-error.ts';
import { type DrawingOptions } from './drawing.ts';

const NARROWEST_PX = 200;
const WIDEST_PX = 4000;
/** Sums and differences of figures up to here stay exact enough to draw. */
const LARGEST = 1e15;
const ID_START = /^[A-Za-z][\w-]*$/;

interface Fault {
  readonly path: readonly string[];
  readonly code: 'not-finite' | 'out-of-range';
}

/** The first number that can't be drawn; its path is put together only when there is one, since logs are long. */
const findFault = (value: unknown): Fault | null => {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) return { path: [], code: 'not-finite' };
    return Math.abs(value) <= LARGEST ? null : { path: [], code: 'out-of-range' };
  }
  if (typeof value !== 'object' || value === null) return null;
  for (const key in value) {
    const fault = findFault((value as Readonly<Record<string, unknown>>)[key]);
    if (fault !== null) return { ...fault, path: [key, ...fault.path] };
  }
  return null;
};

const checkNumbers = (value: unknown, name?: string): void => {
  const fault = findFault(value);
  if (fault === null) return;
  const field = [...(name === undefined ? [] : [name]), ...fault.path].join('.');
  const advice =
    fault.code === 'not-finite'
      ? 'is not a number: leave it out or give a figure.'
      : 'is larger than anything a workshop measures: check the figure and its unit.';
  throw new ChartInputError(fault.code, field, `${field} ${advice}`);
};

/**
 * Refuses data that can't be drawn before any drawing starts.
 *
 * @throws ChartInputError when a number is NaN, infinite or beyond 10¹⁵, the width is outside 200 to 4000 px, or the id prefix can't start an id.
 */
export function checkInput(data: unknown, options: DrawingOptions): void {
  checkNumbers(data);
  checkNumbers(options, 'options');
  if (options.widthPx < NARROWEST_PX || options.widthPx > WIDEST_PX) {
    throw new ChartInputError('out-of-range', 'options.widthPx', `A drawing is ${NARROWEST_PX} to ${WIDEST_PX} px wide: change widthPx.`);
  }
  if (!ID_START.test(options.idPrefix)) {
    throw new ChartInputError('bad-id-prefix', 'options.idPrefix', 'Start idPrefix with a letter, then letters, digits and hyphens only.');
  }
}
