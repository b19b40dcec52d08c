import { type Grid } from '../grid/grid.ts';
import { quantile } from '../grid/quantile.ts';
import { heatKPerMin } from '../model/heat-per-minute.ts';
import { sayTemp } from '../words/say.ts';
import { type Findings, type Opinion } from './findings.ts';

/** Highest nominal temperature in common use for plain wax; used when none is known. */
const HIGHEST_NOMINAL_C = 92;
/** Valves that can be told to open later by the engine computer regulate up to about 110 °C. */
const COMMANDED_EXTRA_K = 10;
const PASSED_BY_K = 10;
/** Electric fans keep a sound engine below this. */
const ABOVE_FANS_C = 103;
const DRIVING_KMH = 25;
const SURE_PASSED_BY_K = 18;
/** Pace above the opening temperature against the pace below it: an opened radiator takes most of it away. */
const UNBROKEN = 0.55;
const SURELY_UNBROKEN = 0.7;

/** The climb goes on past the opening temperature as if nothing had opened. */
export function stuckClosed(findings: Findings): Opinion | null {
  const { grid, knee, highestC, kind } = findings;
  const commanded = kind === 'heated-wax' || kind === 'motor-valve' || kind === 'hybrid';
  const nominalC = (findings.nominalC ?? HIGHEST_NOMINAL_C) + (commanded ? COMMANDED_EXTRA_K : 0);
  if (highestC < nominalC + PASSED_BY_K || (knee && knee.tempC < nominalC + PASSED_BY_K)) return null;
  const pace = paceRatio(grid, nominalC, highestC);
  if (pace === null || pace < UNBROKEN) return null;
  if (highestC < ABOVE_FANS_C && (pace < SURELY_UNBROKEN || !drivesAbove(grid, nominalC))) return null;
  const sure = pace >= SURELY_UNBROKEN && highestC >= nominalC + SURE_PASSED_BY_K;
  const above =
    findings.nominalC === null
      ? 'above what any common thermostat regulates to'
      : `${Math.round(highestC - findings.nominalC)} °C above the marked ${sayTemp(findings.nominalC)}`;
  return {
    verdict: 'stuck-closed',
    confidence: sure ? 0.9 : 0.7,
    reasons: [
      `The coolant climbs to ${sayTemp(highestC)}, ${above}, at ${Math.round(100 * pace)} % of the pace it had before: the radiator took no part.`,
      'A failed water pump, low coolant or gas from a leaking head gasket climb alike: is the radiator-side hose cold while the engine is hot?',
    ],
  };
}

/** On the road the wind cools a radiator that takes part, whatever the fan does. */
function drivesAbove({ speedKmh, smoothC }: Grid, nominalC: number): boolean {
  if (!speedKmh) return false;
  const speeds = speedKmh.filter((_, index) => (smoothC[index] ?? 0) > nominalC + 2);
  return speeds.length > 0 && quantile(speeds, 0.5) >= DRIVING_KMH;
}

/** Pace between nominal and the top against the pace of the 20 °C below, both for equal heat input. */
function paceRatio(grid: Grid, nominalC: number, highestC: number): number | null {
  const { smoothC, stepS } = grid;
  const at = (tempC: number): number => smoothC.findIndex((value) => value >= tempC);
  const before = { from: at(nominalC - 20), to: at(nominalC - 2) };
  const after = { from: at(nominalC + 2), to: at(highestC - 0.5) };
  if (before.from < 0 || before.to <= before.from || after.to <= after.from) return null;
  const perHeat = ({ from, to }: { from: number; to: number }): number => {
    let heat = 0;
    for (let index = from; index < to; index += 1) heat += (heatKPerMin(grid, index) * stepS) / 60;
    return ((smoothC[to] ?? 0) - (smoothC[from] ?? 0)) / heat;
  };
  const below = perHeat(before);
  return below > 0 ? perHeat(after) / below : null;
}
