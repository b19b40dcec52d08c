import { type Grid } from './grid.ts';

interface Channels {
  airFlowGps: Float64Array | null;
  loadPercent: Float64Array | null;
  rpm: Float64Array | null;
  speedKmh: Float64Array | null;
  size: number;
}

/**
 * What follows the fuel burnt best among the channels logged. Scaled so that quick driving is near 1 whichever it is: only the shape
 * over time matters, the fit finds the size.
 */
export function heatInput({ airFlowGps, loadPercent, rpm, speedKmh, size }: Channels): Pick<Grid, 'heat' | 'heatFrom'> {
  if (airFlowGps) return { heat: airFlowGps.map((value) => value / 20), heatFrom: 'air flow' };
  if (loadPercent && rpm) {
    return { heat: loadPercent.map((value, index) => (value * (rpm[index] ?? 0)) / 120_000), heatFrom: 'load and engine speed' };
  }
  if (speedKmh) return { heat: speedKmh.map((value) => value / 60), heatFrom: 'road speed' };
  if (rpm) return { heat: rpm.map((value) => value / 1500), heatFrom: 'engine speed' };
  return { heat: new Float64Array(size), heatFrom: 'time' };
}
