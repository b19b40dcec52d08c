import { type Glycol } from '../glycol.ts';

/** One row of the published table: pure glycol in water, freezing point where the first ice crystals form. */
export interface FreezingRow {
  readonly massPercent: number;
  readonly volumePercent: number;
  readonly freezingPointC: number;
}

const row = (massPercent: number, volumePercent: number, freezingPointC: number): FreezingRow => ({
  massPercent,
  volumePercent,
  freezingPointC,
});

/**
 * Freezing point, mass % and volume % of ethylene and propylene glycol in water.
 *
 * Source: ASHRAE Handbook, Fundamentals (2001), "Physical properties of secondary coolants (brines)", freezing-point
 * tables, as held in SecCool 1.33 (Skovrup 2013) within the CoolProp repository
 * (dev/incompressible_liquids/CPIncomp/data/SecCool/xVolume, commit ea27c639, MIT licence). Read; table content
 * copyright ASHRAE.
 */
export const ASHRAE_FREEZING: Readonly<Record<Glycol, readonly FreezingRow[]>> = {
  ethylene: [
    row(0, 0, 0),
    row(5, 4.4, -1.4),
    row(10, 8.9, -3.2),
    row(15, 13.6, -5.4),
    row(20, 18.1, -7.8),
    row(21, 19.2, -8.4),
    row(22, 20.1, -8.9),
    row(23, 21, -9.5),
    row(24, 22, -10.2),
    row(25, 22.9, -10.7),
    row(26, 23.9, -11.4),
    row(27, 24.8, -12),
    row(28, 25.8, -12.7),
    row(29, 26.7, -13.3),
    row(30, 27.7, -14.1),
    row(31, 28.7, -14.8),
    row(32, 29.6, -15.4),
    row(33, 30.6, -16.2),
    row(34, 31.6, -17),
    row(35, 32.6, -17.9),
    row(36, 33.5, -18.6),
    row(37, 34.5, -19.4),
    row(38, 35.5, -20.3),
    row(39, 36.5, -21.3),
    row(40, 37.5, -22.3),
    row(41, 38.5, -23.2),
    row(42, 39.5, -24.3),
    row(43, 40.5, -25.3),
    row(44, 41.5, -26.4),
    row(45, 42.5, -27.5),
    row(46, 43.5, -28.8),
    row(47, 44.5, -29.8),
    row(48, 45.5, -31.1),
    row(49, 46.6, -32.6),
    row(50, 47.6, -33.8),
    row(51, 48.6, -35.1),
    row(52, 49.6, -36.4),
    row(53, 50.6, -37.9),
    row(54, 51.6, -39.3),
    row(55, 52.7, -41.1),
    row(56, 53.7, -42.6),
    row(57, 54.7, -44.2),
    row(58, 55.7, -45.6),
    row(59, 56.8, -47.1),
    row(60, 57.8, -48.3),
  ],
  propylene: [
    row(0, 0, 0),
    row(5, 4.8, -1.6),
    row(10, 9.6, -3.3),
    row(15, 14.5, -5.1),
    row(20, 19.4, -7.1),
    row(21, 20.4, -7.6),
    row(22, 21.4, -8),
    row(23, 22.4, -8.6),
    row(24, 23.4, -9.1),
    row(25, 24.4, -9.6),
    row(26, 25.3, -10.2),
    row(27, 26.4, -10.8),
    row(28, 27.4, -11.4),
    row(29, 28.4, -12),
    row(30, 29.4, -12.7),
    row(31, 30.4, -13.4),
    row(32, 31.4, -14.1),
    row(33, 32.4, -14.8),
    row(34, 33.5, -15.6),
    row(35, 34.4, -16.4),
    row(36, 35.5, -17.3),
    row(37, 36.5, -18.2),
    row(38, 37.5, -19.1),
    row(39, 38.5, -20.1),
    row(40, 39.6, -21.1),
    row(41, 40.6, -22.1),
    row(42, 41.6, -23.2),
    row(43, 42.6, -24.3),
    row(44, 43.7, -25.5),
    row(45, 44.7, -26.7),
    row(46, 45.7, -27.9),
    row(47, 46.8, -29.3),
    row(48, 47.8, -30.6),
    row(49, 48.9, -32.1),
    row(50, 49.9, -33.5),
    row(51, 50.9, -35),
    row(52, 51.9, -36.6),
    row(53, 53, -38.2),
    row(54, 54, -39.8),
    row(55, 55, -41.6),
    row(56, 56, -43.3),
    row(57, 57, -45.2),
    row(58, 58, -47.1),
    row(59, 59, -49),
    row(60, 60, -51.1),
  ],
};
