import { type Quantity } from './quantity.ts';

const QUANTITY_OF_PID: Readonly<Record<number, Quantity>> = {
  0x04: 'load',
  0x05: 'coolant',
  0x0c: 'rpm',
  0x0d: 'speed',
  0x0f: 'intake',
  0x10: 'airFlow',
  0x46: 'ambient',
};

/** Number of the channel in `05`, `105` or `0105` (with the service in front), `0x05` or `05 - Coolant`; null when the text is none. */
export function pidNumber(text: string): number | null {
  const match = /^\s*(?:0x)?(?:0?1(?=[0-9a-f]{2}\b))?([0-9a-f]{2})\s*(?:$|[-:–]\s)/i.exec(text);
  return match?.[1] === undefined ? null : parseInt(match[1], 16);
}

/** The quantity behind a channel number, or null. */
export function pidQuantity(text: string): Quantity | null {
  const pid = pidNumber(text);
  return (pid === null ? undefined : QUANTITY_OF_PID[pid]) ?? null;
}
