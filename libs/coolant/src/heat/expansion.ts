import { formatVolume } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { type Glycol } from '../glycol.ts';
import { refuse, type Grounds, type Outcome, type Warning } from '../outcome.ts';
import { SOURCE } from '../sources.ts';
import { creditedMassPercent } from '../strength/credited-mass-percent.ts';
import { strengthWarnings } from '../strength/strength-warnings.ts';
import { type Strength, type StrengthInput } from '../strength/strength.ts';
import { toStrength } from '../strength/to-strength.ts';
import { ashraeDensityKgPerL } from './ashrae-density.ts';
import { densityKgPerL } from './density.ts';
import { mixtureAt } from './mixture-at.ts';

export interface ExpansionInput extends StrengthInput {
  readonly glycol: Glycol;
  readonly volumeL: number;
  readonly fromC: number;
  /** At most 100 °C. */
  readonly toC: number;
  /** Free space in the expansion tank above the cold mark, L. */
  readonly tankSpaceL?: number | undefined;
}

/** Whether the tank takes what expands, the uncertainty counted: `unsure` where only the middle figure fits. */
export interface TankSpace {
  readonly verdict: 'enough' | 'unsure' | 'too-small';
  /** Free space less the expansion, L; negative: so much is pushed out. */
  readonly spareL: number;
}

export interface Expansion extends Grounds {
  /** Grows by so much, L; negative on cooling. */
  readonly expansionL: number;
  readonly expansionPercent: number;
  /** Plus or minus so many percentage points. */
  readonly uncertaintyPercent: number;
  readonly tank?: TankSpace;
}

/** How far the published densities leave the expansion open, in percentage points. */
const UNCERTAINTY_PERCENT = 0.5;

/**
 * What a volume grows by when its density falls, from mass staying the same.
 *
 * @param volumeL Volume before, L
 * @param density Density before and after, in any one unit
 * @example expandedByL(0.8, { before: 1090, after: 1042 }) // 0.03685
 */
export function expandedByL(volumeL: number, density: { readonly before: number; readonly after: number }): number {
  return volumeL * (density.before / density.after - 1);
}

function shares(strength: Strength, input: ExpansionInput): { melinder: number; ashrae: number | null } {
  const { glycol, fromC, toC } = input;
  const massFraction = creditedMassPercent(glycol, strength) / 100;
  const { volumePercent } = strength;
  const melinder = expandedByL(1, {
    before: densityKgPerL(glycol, { tempC: fromC, massFraction }),
    after: densityKgPerL(glycol, { tempC: toC, massFraction }),
  });
  const before = ashraeDensityKgPerL(glycol, { tempC: fromC, volumePercent });
  const after = ashraeDensityKgPerL(glycol, { tempC: toC, volumePercent });
  return { melinder, ashrae: before === null || after === null ? null : expandedByL(1, { before, after }) };
}

function tankSpace(tankSpaceL: number, expansionL: number, uncertaintyL: number): TankSpace {
  const spareL = tankSpaceL - expansionL;
  if (spareL >= uncertaintyL) return { verdict: 'enough', spareL };
  return { verdict: spareL < -uncertaintyL ? 'too-small' : 'unsure', spareL };
}

function tankWarnings(tank: TankSpace | undefined): readonly Warning[] {
  if (!tank || tank.verdict === 'enough') return [];
  const over = formatVolume(Math.abs(tank.spareL), { unit: 'L' });
  const text =
    tank.verdict === 'too-small'
      ? `The tank is ${over} short of space: hot coolant will be pushed out. Check the level against the cold mark.`
      : 'The tank may or may not take what expands: the published figures leave it open. Do not fill above the cold mark.';
  return [{ code: 'tank-too-small', text }];
}

function checkVolumes(input: ExpansionInput): ReturnType<typeof checkNumber> {
  return (
    checkNumber(input.volumeL, { field: 'volumeL', name: 'The volume', unit: 'L', least: 0, most: 10000 }) ??
    checkNumber(input.tankSpaceL ?? 0, { field: 'tankSpaceL', name: "The tank's free space", unit: 'L', least: 0, most: 10000 })
  );
}

/**
 * By how much coolant grows from cold to hot, and whether the tank takes it.
 *
 * Two published densities disagree a little; the larger expansion is given, with ±0.5 percentage points.
 *
 * @param input Glycol, exactly one strength, volume in L when at `fromC`, temperatures in °C from freezing point to 100
 * @example expansion({ glycol: 'ethylene', volumePercent: 50, volumeL: 7, fromC: 20, toC: 90 }) // expansionL 0.32
 */
export function expansion(input: ExpansionInput): Outcome<Expansion> {
  const problem = checkVolumes(input);
  if (problem) return refuse(problem);
  const found = toStrength(input.glycol, input, { field: '' });
  if (!found.ok) return found;
  const { strength } = found;
  const from = mixtureAt(strength, input.fromC, { field: 'fromC' });
  if (!from.ok) return from;
  const to = mixtureAt(strength, input.toC, { field: 'toC' });
  if (!to.ok) return to;
  const { melinder, ashrae } = shares(strength, input);
  const share = ashrae !== null && Math.abs(ashrae) > Math.abs(melinder) ? ashrae : melinder;
  const expansionL = input.volumeL * share;
  const tank =
    input.tankSpaceL === undefined ? undefined : tankSpace(input.tankSpaceL, expansionL, (input.volumeL * UNCERTAINTY_PERCENT) / 100);
  return {
    ok: true,
    expansionL,
    expansionPercent: share * 100,
    uncertaintyPercent: UNCERTAINTY_PERCENT,
    ...(tank ? { tank } : {}),
    assumptions: [
      `The larger of two published expansions is given, plus or minus ${UNCERTAINTY_PERCENT} percentage points.`,
      ...(ashrae === null ? ['Only one of the two tables covers this strength and temperature.'] : []),
      'Hoses and metal grow too and take a little of it; that is not counted.',
    ],
    warnings: [...strengthWarnings(strength, { percent: null }).filter(({ code }) => code === 'at-least'), ...tankWarnings(tank)],
    sources: [SOURCE.density, SOURCE.ashraeDensity],
  };
}
