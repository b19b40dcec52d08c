/** Figures beyond this are written with a power of ten, so that they stay short enough to place. */
const PLAIN_LIMIT = 1e9;

/**
 * Writes a number for a drawing: real minus sign, at most `decimals` places, no trailing zeros unless `fixed`.
 *
 * @example formatFigure(-27, { decimals: 1 }); // '−27'
 * @example formatFigure(54, { decimals: 1, fixed: true }); // '54.0'
 */
export function formatFigure(value: number, { decimals = 1, fixed = false }: { decimals?: number; fixed?: boolean } = {}): string {
  if (Math.abs(value) >= PLAIN_LIMIT) return value.toExponential(1).replaceAll('-', '−').replace('+', '');
  const rounded = value.toFixed(decimals);
  const written = fixed ? rounded : String(Number(rounded));
  return Number(rounded) === 0 ? written.replace('-', '') : written.replace('-', '−');
}
