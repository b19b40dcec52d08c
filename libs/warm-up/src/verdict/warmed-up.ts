/** Lowest nominal temperature in common use for cars, taken when none is known. */
const LOWEST_NOMINAL_C = 80;
/** 20 °F: a difference, so only the factor 5/9 applies (11.1), given as 11 °C in the rule. */
export const YARDSTICK_K = 11;

/** The temperature from which an engine counts as warmed up: nominal less 11 °C. */
export function warmedUpC(nominalC: number | null): number {
  return (nominalC ?? LOWEST_NOMINAL_C) - YARDSTICK_K;
}
