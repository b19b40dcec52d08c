import { type Glycol } from '../glycol.ts';

/** Mass % and freezing point in °C. */
export type MelinderFreezingRow = readonly [number, number];

/**
 * Freezing points by Melinder: a check on the ASHRAE table, not used in computing.
 *
 * Source: Å. Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010, tabulated in SecCool 1.33
 * within the CoolProp repository (xMass/Melinder, *_TFreeze.txt, commit ea27c639, MIT licence). Read.
 */
export const MELINDER_FREEZING: Readonly<Record<Glycol, readonly MelinderFreezingRow[]>> = {
  ethylene: [
    [0, -0.010340516],
    [5, -1.653179544],
    [10, -3.400690275],
    [15, -5.446263312],
    [20, -7.932329993],
    [25, -10.95978239],
    [30, -14.59739331],
    [35, -18.89123628],
    [40, -23.87410559],
    [45, -29.57493625],
    [50, -36.02822398],
    [55, -43.28344527],
    [56, -44.83668719],
  ],
  propylene: [
    [15, -5.004475347],
    [20, -7.163558874],
    [25, -9.970529762],
    [30, -13.08164068],
    [35, -16.57527373],
    [40, -20.7918154],
    [45, -26.17353161],
    [50, -33.10444269],
    [55, -41.7501984],
    [57, -45.6573557],
  ],
};
