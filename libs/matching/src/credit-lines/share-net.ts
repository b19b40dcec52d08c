import { allocate, type DecimalString } from '#libs/money';

const LEAST_PLACES = 2;

/**
 * Splits an amount into equal parts that add up to it exactly, in its own decimals but at least two.
 *
 * @param net - amount
 * @param pieces - one or more
 * @example shareNet('10.00', 3) // ['3.34', '3.33', '3.33']
 */
export function shareNet(net: DecimalString, pieces: number): DecimalString[] {
  const places = Math.max(LEAST_PLACES, net.split('.')[1]?.length ?? 0);
  return allocate(
    net,
    Array.from({ length: pieces }, () => '1'),
    { places },
  );
}
