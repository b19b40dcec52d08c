import { type Quantity } from './quantity.ts';
import { readTimeUnit, readUnit } from './read-unit.ts';
import { type TimeUnit, type Unit } from './units.ts';

/** The unit in brackets or at the end of a header: `Speed (OBD)(mph)`, `coolant_temp_c`, `coolantC`; null when there is none. */
export function unitInHeader(header: string, quantity: Quantity): Unit | null {
  for (const part of parts(header)) {
    const unit = readUnit(part, quantity);
    if (unit) return unit;
  }
  return null;
}

export function timeUnitInHeader(header: string): TimeUnit | null {
  for (const part of parts(header)) {
    const unit = readTimeUnit(part);
    if (unit) return unit;
  }
  return null;
}

/** Brackets from the last to the first, then the last word, or the whole header when it is a single word. */
function parts(header: string): string[] {
  const bracketed = [...header.matchAll(/[[({]([^\])}]*)[\])}]/g)].map(([, inside]) => inside ?? '').reverse();
  const spaced = header.trim().replace(/([a-z])([A-Z])/g, '$1 $2');
  const tail = /[\s_,;-]([^\s_,;()[\]-]+)\s*$/.exec(spaced)?.[1];
  return [...bracketed, tail ?? header];
}
