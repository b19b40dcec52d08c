import { formatTemperature } from '#libs/units';

/** A temperature in words of a document, with a real minus. @example temperatureText(-27) // '−27 °C' */
export const temperatureText = (tempC: number): string => formatTemperature(tempC, { unit: '°C', decimals: 0 });
