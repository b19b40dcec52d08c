/** 1 US liquid quart = 57.75 cubic inches of 25.4 mm: 0.946352946 L exactly. Source: NIST Handbook 44, Appendix C (from memory). */
export const LITRES_PER_US_QUART = 0.946352946;

/** 1 psi = 0.45359237 kg × 9.80665 m/s² over (0.0254 m)², in kPa. Source: BIPM and NIST SP 811 definitions (from memory). */
export const KPA_PER_PSI = 6.894757293168361;

/** 1 bar = 100 kPa exactly. */
export const KPA_PER_BAR = 100;

/**
 * 1 lbf·ft = 1.3558179483314004 Nm exactly: pound 0.45359237 kg, standard gravity 9.80665 m/s², foot 0.3048 m.
 * Source: BIPM and NIST SP 811 definitions (from memory).
 */
export const NEWTON_METRES_PER_POUND_FOOT = 0.45359237 * 9.80665 * 0.3048;

/** 1 inch = 25.4 mm exactly, since 1959. */
export const MILLIMETRES_PER_INCH = 25.4;
