import { type CleanLog } from '../clean/clean-log.ts';
import { type Deglitched } from '../clean/drop-glitches.ts';
import { type Start } from '../describe/cold-start.ts';
import { type Level } from '../describe/settled-level.ts';
import { type Air } from '../grid/air-temperature.ts';
import { type Grid } from '../grid/grid.ts';
import { type KneeFit } from '../knee/fit-knee.ts';
import { type Opening } from '../knee/opening.ts';
import { type HeaterUse } from '../model/heater-share.ts';
import { type FallWithSpeed, type FanCycling, type HeatInput, type Verdict } from '../types/analysis.ts';
import { type ThermostatKind } from '../types/thermostat-kind.ts';

/** Everything measured on one log; the opinions below only read it. */
export interface Findings {
  log: CleanLog;
  deglitched: Deglitched;
  readings: number;
  grid: Grid;
  air: Air;
  start: Start;
  knee: KneeFit | null;
  opening: Opening | null;
  level: Level | null;
  /** Heat lost per second and degree above the air, from the best curve with a valve that never moves; null if no such curve. */
  lossPerS: number | null;
  /** The same over the climb to the knee alone: what block, heater and a shut valve let go. Null without a knee or a climb too short. */
  lossShutPerS: number | null;
  fall: FallWithSpeed | null;
  fan: FanCycling | null;
  heat: HeatInput;
  heater: HeaterUse;
  nominalC: number | null;
  kind: ThermostatKind;
  highestC: number;
  endC: number;
}

/** What one way of looking at the log says, in words. */
export interface Opinion {
  verdict: Verdict;
  confidence: number;
  reasons: string[];
}
