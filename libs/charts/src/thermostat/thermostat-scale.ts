import { checkFeatures, type ThermostatFeatures } from './features.ts';

/** One scale for several thermostats, so that drawings side by side can be compared by eye. */
export interface ThermostatScale {
  readonly pxPerMm: number;
  /** The axis all parts stand on, from the left. */
  readonly axisX: number;
  /** Where the upper face of every flange lies. */
  readonly flangeY: number;
  /** The lowest point of the longest part. */
  readonly footY: number;
  /** The largest flange, seal included. */
  readonly widestMm: number;
}

/** What an unknown dimension is drawn as, broken: middling sizes of the trade, no source. */
export const ASSUMED_MM = { flangeDiameterMm: 54, heightMm: 46, valveShare: 0.65 } as const;

const LEFT_PX = 20;
const RIGHT_PX = 62;
const HEADER_PX = 56;
const MOST_PX_PER_MM = 3.4;
const MOST_HEIGHT_PX = 260;
const BRIDGE_SHARE = 0.3;
const BRIDGE_MM = 14;

/** How far the bridge stands above the flange. */
export function bridgeMm(heightMm: number): number {
  return Math.min(BRIDGE_MM, heightMm * BRIDGE_SHARE);
}

/**
 * Finds the scale at which all the given thermostats fit drawings of one width.
 *
 * @throws ChartInputError when a dimension is none that a thermostat has.
 */
export function thermostatScale(parts: readonly ThermostatFeatures[], widthPx: number): ThermostatScale {
  parts.forEach((part, index) => checkFeatures(part, `parts.${index}`));
  const heights = parts.map(({ heightMm }) => heightMm ?? ASSUMED_MM.heightMm);
  const widestMm = Math.max(1, ...parts.map(({ flangeDiameterMm }) => flangeDiameterMm ?? ASSUMED_MM.flangeDiameterMm));
  const aboveMm = Math.max(1, ...heights.map(bridgeMm));
  const belowMm = Math.max(1, ...heights.map((heightMm) => heightMm - bridgeMm(heightMm)));
  const pxPerMm = Math.min((widthPx - LEFT_PX - RIGHT_PX) / widestMm, MOST_HEIGHT_PX / (aboveMm + belowMm), MOST_PX_PER_MM);
  const flangeY = HEADER_PX + aboveMm * pxPerMm;
  return { pxPerMm, axisX: LEFT_PX + (widestMm * pxPerMm) / 2, flangeY, footY: flangeY + belowMm * pxPerMm, widestMm };
}
