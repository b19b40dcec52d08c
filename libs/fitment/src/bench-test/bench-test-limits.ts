import { type BenchTestLimits } from './bench-test.types.ts';

/**
 * Limits where the maker's are not at hand. Opening ± 2 °C, full lift 9 to 13 °C above it, at least 8 mm (7 to 14 by engine)
 * and shut by 5 °C below: printed in service and army technical manuals for several engines (read); the widest travel is
 * taken.
 */
export const defaultBenchTestLimits: BenchTestLimits = { openingToleranceC: 2, travelC: 13, leastLiftMm: 8, closedBelowC: 5 };

/** Wax follows the water late by up to this many seconds (from memory): fast heating reads high. */
export const WAX_LAG_S = 20;

/** A lag that matters against a tolerance of 2 °C. */
export const LAG_WORTH_A_WARNING_C = 0.5;

/** Before anyone begins. */
export const benchTestCautions: readonly string[] = [
  'Scalding: the water is near boiling. Tongs, gloves and goggles; let it cool before you reach in.',
  'Hang the thermostat and the thermometer clear of the bottom and stir. Heat gently, about 1 °C a minute near the stamp.',
  'The vehicle maker’s figures go before these limits.',
];
