import { PID_FORMULAS } from './pid-formulas.ts';

/**
 * Turns the bytes of an answer into a figure, by the formulas of SAE J1979 / ISO 15031-5, service 01.
 *
 * @param pid Number of the channel, such as 0x05 for coolant
 * @param hex The data bytes as hexadecimal digits, without header: `7B`, `1AF8` or `1A F8`
 * @returns The figure in its unit, or null for a channel that is not known here or bytes that don't fit it
 * @example decodePid(0x05, '7B') // { value: 83, unit: '°C', name: 'coolant temperature' }
 */
export function decodePid(pid: number, hex: string): { value: number; unit: string; name: string } | null {
  const formula = PID_FORMULAS.find((known) => known.pid === pid);
  const digits = hex.replace(/\s+/g, '');
  if (!formula || !/^[0-9a-f]+$/i.test(digits) || digits.length !== 2 * formula.bytes) return null;
  const a = parseInt(digits.slice(0, 2), 16);
  const b = formula.bytes === 2 ? parseInt(digits.slice(2, 4), 16) : 0;
  return { value: formula.value(a, b), unit: formula.unit, name: formula.name };
}
