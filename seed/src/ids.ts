import type { Random } from './random.ts';

/** A UUID from the demo's own random numbers, so that every demo is the same. */
export function nextId(random: Random): string {
  const bytes = Array.from({ length: 16 }, () => random.between(0, 255));
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x40;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = bytes.map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}
