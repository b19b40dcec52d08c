import { shownTemperature, type TemperatureUnit } from '#libs/units';

/** Figures computed to a whole step but for the last digit of arithmetic stay on it. */
const SLACK = 1e-9;

/**
 * A protection as it may be shown: rounded towards warmer, so that nobody counts on a degree that isn't there.
 *
 * @param freezingPointC Freezing point in °C
 * @param shown Unit, and digits after the point (usually none)
 * @returns The number to show, in that unit
 * @example shownProtection(-36.77, { unit: '°C' }) // -36
 */
export function shownProtection(
  freezingPointC: number,
  shown: { readonly unit: TemperatureUnit; readonly decimals?: number | undefined },
): number {
  const step = 10 ** (shown.decimals ?? 0);
  const rounded = Math.ceil(shownTemperature(freezingPointC, shown.unit) * step - SLACK) / step;
  return rounded === 0 ? 0 : rounded;
}
