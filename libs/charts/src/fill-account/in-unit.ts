import { shownVolume } from '#libs/units';
import { type FillAccountData, type FillAmount, IN_STAGES, OUT_STAGES } from './fill-account-data.ts';

/** The account with every volume in the unit that it is drawn in. */
export function inUnit(data: FillAccountData): FillAccountData {
  const { unit = 'L' } = data;
  if (unit === 'L') return data;
  const shown = (volumeL: number): number => shownVolume(volumeL, unit);
  const amount = (of: FillAmount | null): FillAmount | null => of && { ...of, volumeL: shown(of.volumeL) };
  return {
    ...data,
    holdsL: data.holdsL === null ? null : shown(data.holdsL),
    toleranceL: shown(data.toleranceL),
    morningLimitL: shown(data.morningLimitL),
    ...(data.shrinkL === undefined ? {} : { shrinkL: shown(data.shrinkL) }),
    ...Object.fromEntries([...OUT_STAGES, ...IN_STAGES].map((stage) => [stage, amount(data[stage])])),
  };
}
