/** Conformance is proven at this probability and above (ISO 14253-1, 2017 default, from memory; JCGM 106:2012). */
export const CONFORMANCE_PROBABILITY = 0.95;

/** One-sided 95 % guard band in standard uncertainties. */
export const GUARD_FACTOR = 1.645;

/**
 * Rounding slack for decimal figures that binary numbers can't hold: 10.05 − 10 is a hair more than 0.05, and a reading
 * on the limit lies inside it.
 */
export const ROUNDING_SLACK = 1e-12;
