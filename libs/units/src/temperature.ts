/**
 * A temperature in degrees Fahrenheit.
 *
 * @param tempC Temperature in °C
 * @returns The same temperature in °F, by the exact definition °F = °C × 9/5 + 32
 * @example celsiusToFahrenheit(-40) // -40
 */
export function celsiusToFahrenheit(tempC: number): number {
  return (tempC * 9) / 5 + 32;
}

/**
 * A temperature in degrees Celsius.
 *
 * @param tempF Temperature in °F
 * @returns The same temperature in °C, by the exact definition °C = (°F − 32) × 5/9
 * @example fahrenheitToCelsius(212) // 100
 */
export function fahrenheitToCelsius(tempF: number): number {
  return ((tempF - 32) * 5) / 9;
}
