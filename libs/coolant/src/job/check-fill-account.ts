import { formatVolume } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { type Problem } from '../outcome.ts';
import { type CardVolume, type FillAccountInput, type Poured } from './fill-account.types.ts';

/** Figures on a card have two decimals; sums of them may be off by the last digit of arithmetic. */
const ARITHMETIC_L = 1e-6;

const MOST_L = 500;

function checkVolume(field: string, value: number | undefined, name: string): Problem | undefined {
  return value === undefined ? undefined : checkNumber(value, { field, name, unit: 'L', least: 0, most: MOST_L });
}

function contradiction(field: string, limit: number, message: string): Problem {
  return { code: 'contradiction', kind: 'impossible', field, limit, message };
}

function checkPoured(field: string, poured: (CardVolume & Poured) | undefined): Problem | undefined {
  if (poured === undefined) return undefined;
  const problem =
    checkVolume(`${field}.volumeL`, poured.volumeL, 'The volume poured in') ??
    checkVolume(`${field}.productL`, poured.productL, 'The product in it') ??
    checkVolume(`${field}.keptL`, poured.keptL, 'The kept coolant in it');
  if (problem) return problem;
  const partsL = (poured.productL ?? 0) + (poured.keptL ?? 0);
  if (partsL <= poured.volumeL + ARITHMETIC_L) return undefined;
  const parts = formatVolume(partsL, { unit: 'L' });
  const whole = formatVolume(poured.volumeL, { unit: 'L' });
  return contradiction(
    `${field}.volumeL`,
    partsL,
    `Product and kept coolant make ${parts}, more than the ${whole} poured in. Check the three figures.`,
  );
}

function checkKept(input: FillAccountInput): Problem | undefined {
  const keptL = input.drained?.keptL ?? 0;
  const drainedL = input.drained?.volumeL ?? 0;
  if (keptL > drainedL + ARITHMETIC_L) {
    return contradiction('drained.keptL', drainedL, `No more can be kept than the ${formatVolume(drainedL, { unit: 'L' })} drained.`);
  }
  const usedL = [input.firstFill, input.afterShortRun, input.afterRunHot, input.nextMorning].reduce(
    (sum, poured) => sum + (poured?.keptL ?? 0),
    0,
  );
  if (usedL <= keptL + ARITHMETIC_L) return undefined;
  const used = formatVolume(usedL, { unit: 'L' });
  return contradiction(
    'drained.keptL',
    usedL,
    `${used} of kept coolant went back in, but only ${formatVolume(keptL, { unit: 'L' })} were kept.`,
  );
}

function checkSpace(input: FillAccountInput): Problem | undefined {
  const { systemVolumeL } = input;
  if (systemVolumeL === undefined) return undefined;
  const spaceL = (input.missingOnArrival?.volumeL ?? 0) + (input.drained?.volumeL ?? 0);
  const isAbout = input.missingOnArrival?.isAbout === true || input.drained?.isAbout === true;
  if (isAbout || spaceL <= systemVolumeL + ARITHMETIC_L) return undefined;
  const system = formatVolume(systemVolumeL, { unit: 'L' });
  const message = `Missing and drained make ${formatVolume(spaceL, { unit: 'L' })}, more than the ${system} the system holds. Check the capacity and both figures.`;
  return { code: 'more-than-system', kind: 'impossible', field: 'drained.volumeL', limit: systemVolumeL, message };
}

/**
 * Whether the figures of a fill account can be true together.
 *
 * @param input As on the card
 * @returns The first problem, or undefined
 */
export function checkFillAccount(input: FillAccountInput): Problem | undefined {
  const { tolerances } = input;
  return (
    checkVolume('systemVolumeL', input.systemVolumeL, 'The system volume') ??
    checkVolume('missingOnArrival.volumeL', input.missingOnArrival?.volumeL, 'What was missing on arrival') ??
    checkVolume('drained.volumeL', input.drained?.volumeL, 'The drained volume') ??
    checkVolume('drained.keptL', input.drained?.keptL, 'The kept volume') ??
    checkVolume('shrinkL', input.shrinkL, 'The shrink on mixing') ??
    checkVolume('tolerances.shortfallL', tolerances?.shortfallL, 'The tolerance of the filling') ??
    checkVolume('tolerances.morningL', tolerances?.morningL, 'The tolerance of the morning') ??
    checkVolume('tolerances.aboutL', tolerances?.aboutL, "The widening for 'about'") ??
    checkPoured('firstFill', input.firstFill) ??
    checkPoured('afterShortRun', input.afterShortRun) ??
    checkPoured('afterRunHot', input.afterRunHot) ??
    checkPoured('nextMorning', input.nextMorning) ??
    checkKept(input) ??
    checkSpace(input)
  );
}
