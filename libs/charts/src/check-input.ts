import { ChartInputError } from './chart-input-error.ts';
import { type DrawingOptions } from './drawing.ts';

const NARROWEST_PX = 200;
const WIDEST_PX = 4000;
const ID_START = /^[A-Za-z][\w-]*$/;

const checkFinite = (value: unknown, field: string): void => {
  if (typeof value === 'number') {
    if (Number.isFinite(value)) return;
    throw new ChartInputError('not-finite', field, `${field} is not a number: leave it out or give a figure.`);
  }
  if (typeof value !== 'object' || value === null) return;
  for (const [key, part] of Object.entries(value)) checkFinite(part, field === '' ? key : `${field}.${key}`);
};

/**
 * Refuses data that can't be drawn before any drawing starts.
 *
 * @throws ChartInputError when a number is NaN or infinite, the width is outside 200 to 4000 px, or the id prefix can't start an id.
 */
export function checkInput(data: unknown, options: DrawingOptions): void {
  checkFinite(data, '');
  checkFinite(options, 'options');
  if (options.widthPx < NARROWEST_PX || options.widthPx > WIDEST_PX) {
    throw new ChartInputError('out-of-range', 'options.widthPx', `A drawing is ${NARROWEST_PX} to ${WIDEST_PX} px wide: change widthPx.`);
  }
  if (!ID_START.test(options.idPrefix)) {
    throw new ChartInputError('bad-id-prefix', 'options.idPrefix', 'Start idPrefix with a letter, then letters, digits and hyphens only.');
  }
}
