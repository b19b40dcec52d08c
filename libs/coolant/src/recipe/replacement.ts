import { formatFigure } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { refuse, type Grounds, type Outcome } from '../outcome.ts';

export interface ReplacementInput {
  /** Volume of the whole, in any unit. */
  readonly systemVolume: number;
  readonly presentPercent: number;
  readonly addedPercent: number;
  readonly targetPercent: number;
}

export interface Replacement extends Grounds {
  /** How much to take out and replace, in the unit of the system volume. */
  readonly drainVolume: number;
}

function share(field: string, name: string, value: number): ReturnType<typeof checkNumber> {
  return checkNumber(value, { field, name, unit: '%', least: 0, most: 100 });
}

/**
 * The drain-and-replace sum of the school books: how much to take out and replace by something else to reach a strength.
 *
 * Plain volume algebra, system × (target − present) ÷ (added − present): no shrink, no mass. For a real filling use
 * {@link recipe}.
 *
 * @param input Volume in any unit; strengths in %
 * @returns The volume in the same unit; refused where the target isn't between the present and the added strength
 * @example replacement({ systemVolume: 3.6, presentPercent: 60, addedPercent: 0, targetPercent: 50 }) // drainVolume 0.6
 */
export function replacement(input: ReplacementInput): Outcome<Replacement> {
  const { systemVolume, presentPercent, addedPercent, targetPercent } = input;
  const problem =
    checkNumber(systemVolume, { field: 'systemVolume', name: 'The system volume', unit: '', above: 0, most: 1e9 }) ??
    share('presentPercent', 'The present strength', presentPercent) ??
    share('addedPercent', 'The strength of what is added', addedPercent) ??
    share('targetPercent', 'The strength wanted', targetPercent);
  if (problem) return refuse(problem);
  const grounds = { assumptions: ['Plain volumes: shrink on mixing is not counted.'], warnings: [], sources: [] };
  if (targetPercent === presentPercent) return { ok: true, drainVolume: 0, ...grounds };
  const drainShare = (targetPercent - presentPercent) / (addedPercent - presentPercent);
  if (Number.isFinite(drainShare) && drainShare >= 0 && drainShare <= 1) {
    return { ok: true, drainVolume: systemVolume * drainShare, ...grounds };
  }
  return refuse({
    code: 'additive-too-weak',
    kind: 'impossible',
    field: 'targetPercent',
    limit: addedPercent,
    message:
      `${formatFigure(targetPercent, 1)} % can't be reached: it must lie between the present ${formatFigure(presentPercent, 1)} % and the ` +
      `added ${formatFigure(addedPercent, 1)} %.`,
  });
}
