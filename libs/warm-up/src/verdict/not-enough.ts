import { sayDuration, sayTemp } from '../words/say.ts';
import { type Findings, type Opinion } from './findings.ts';
import { mayHoldLower } from './may-hold-lower.ts';
import { LATE_K } from './tolerance.ts';
import { warmedUpC } from './warmed-up.ts';

const SHORT_S = 480;
const WARM_START_C = 50;
const IDLE_SHARE = 0.5;
const COLD_AIR_C = -7;
const SLOW_KMH = 30;
const HOT_AIR_C = 28;

/** Why this log settles nothing, in the order a technician would ask. */
export function notEnough(findings: Findings): Opinion {
  const { grid, start, heat, air, endC, highestC, nominalC, knee, opening } = findings;
  const reasons: string[] = [];
  const warm = highestC >= warmedUpC(nominalC);
  if (start.startC >= WARM_START_C)
    reasons.push(`The engine started at ${sayTemp(start.startC)}: the climb from cold, which would show the valve opening, is missing.`);
  if (grid.durationS < SHORT_S) reasons.push(`The log lasts only ${sayDuration(grid.durationS)}.`);
  if (!warm) reasons.push(`It ends at ${sayTemp(endC)}, before any thermostat opens; that alone is no fault.`);
  else if (opening && nominalC !== null && opening.estimate > nominalC + LATE_K) {
    reasons.push(
      `The climb ends at ${sayTemp(highestC)}, well above the marked ${sayTemp(nominalC)}: is the mark right for this engine, or did only the fan end the climb?`,
    );
  } else if (!knee) {
    reasons.push(
      `It reaches ${sayTemp(highestC)}, but the climb bends gently: a thermostat that opens and an engine that finds its own balance can't be told apart here.`,
    );
  } else if (mayHoldLower(findings)) {
    reasons.push(
      `The climb bends at ${sayTemp(knee.tempC)}; this kind of valve may hold such a level by design, so look up what the maker commands.`,
    );
  } else {
    reasons.push(
      `The climb bends at ${sayTemp(knee.tempC)}, but what follows is too short or too uneven to call it the level of a thermostat.`,
    );
  }
  if (heat.stationaryShare !== null && heat.stationaryShare > IDLE_SHARE) {
    reasons.push(`The car stood for ${Math.round(100 * heat.stationaryShare)} % of the time; an idling engine makes little heat.`);
  } else if (heat.meanSpeedKmh !== null && heat.meanSpeedKmh < SLOW_KMH) {
    reasons.push(
      `At ${Math.round(heat.meanSpeedKmh)} km/h on average the engine makes too little heat to tell a fault from a slow warm-up.`,
    );
  }
  if (heat.meanSpeedKmh === null) reasons.push('Road speed was not logged, so heat input is unknown.');
  if (air.airC !== null && air.airC < COLD_AIR_C)
    reasons.push(`At ${sayTemp(air.airC)} outside even sound engines may stay cool with the heater on.`);
  if (air.airC !== null && air.airC > HOT_AIR_C && warm)
    reasons.push(`At ${sayTemp(air.airC)} outside an engine can get hot with an open thermostat too.`);
  return { verdict: 'not-enough', confidence: warm ? 0.6 : 0.8, reasons };
}
