/** So much room above what can come out at most, L. Common practice, no source. */
const ROOM_L = 1;

/**
 * A tray that holds more than can come out: the whole system less what is missing, up to the next whole litre, and a litre of
 * room, since it is carried.
 *
 * @example traySizeL(6.2, 0) // 8
 */
export function traySizeL(capacityL: number, missingL: number): number {
  return Math.ceil(Math.max(0, capacityL - Math.max(0, missingL)) - 1e-9) + ROOM_L;
}
