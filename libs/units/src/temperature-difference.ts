/**
 * A difference of temperatures in Fahrenheit degrees. A difference has no 32 in it: 11 K is 19.8 °F, not 51.8.
 *
 * @param differenceK Difference in K (the same as in °C)
 * @returns The same difference in Fahrenheit degrees
 * @example kelvinToFahrenheitDegrees(10) // 18
 */
export function kelvinToFahrenheitDegrees(differenceK: number): number {
  return (differenceK * 9) / 5;
}

/**
 * A difference of temperatures in kelvin.
 *
 * @param differenceF Difference in Fahrenheit degrees
 * @returns The same difference in K
 * @example fahrenheitDegreesToKelvin(18) // 10
 */
export function fahrenheitDegreesToKelvin(differenceF: number): number {
  return (differenceF * 5) / 9;
}
