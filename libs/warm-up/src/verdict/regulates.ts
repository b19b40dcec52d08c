import { sawTeeth } from '../describe/fan-cycling.ts';
import { SHARP } from '../knee/choose-knee.ts';
import { type KneeFit } from '../knee/fit-knee.ts';
import { type Opening } from '../knee/opening.ts';
import { heaterShare } from '../model/heater-share.ts';
import { SLOW_ENGINE } from '../model/slow-engine.ts';
import { slowHealthyCurve } from '../model/slow-healthy-curve.ts';
import { sayDuration, sayTemp } from '../words/say.ts';
import { type Findings, type Opinion } from './findings.ts';

/** Makers' tolerance on the opening temperature, ±2 °C usually, ±3 °C in military manuals. */
const TOLERANCE_K = 3;
const EARLY_K = 5;
const LATE_K = 6;
/** A valve that opens this far below its mark hardly closes at all. */
const NO_THERMOSTAT_K = 27;
const LOWEST_OPENING_C = 58;
/** Where no mark is known: below the first no car thermostat opens by design, below the second few do. */
const UNMARKED_LOW_C = 70;
const UNMARKED_UNUSUAL_C = 76;
/** An open valve can hold up to about this much above the air. */
const ABOVE_WARM_AIR_K = 45;
const HOLDS_LONG_ENOUGH_S = 240;
const VERY_SHARP = 5;
const FAIRLY_SHARP = 3;
const BEHIND_K = 12;
/** A block with the heater off and the valve tight loses at most this (per second and degree). */
const TIGHT_LOSS_PER_S = 0.0006;
const UNEXPLAINED_PER_S = 0.00035;
const NEAR_KNEE_K = 4;
const WELL_PAST_K = 8;
/** A low level must be kept for a while and evenly before the valve is blamed for it: a slow stretch of road bends the curve too. */
const FAN_K = 2;
/** Fans switch on from about here; a slow climb that ends here and falls was ended by the fan. */
const FAN_FROM_C = 94.5;
const FAN_PULLS_K = 3;
const SLOW_CLIMB_C_PER_S = 0.05;
/** Without road speed nobody knows when the radiator got its wind; on a warm day only an unmistakable bend counts then. */
const WARM_AIR_C = 20;
const HOT_AIR_C = 30;
const SHARPER_PER_K = 0.15;
const UNMISTAKABLE = 10;
const EVEN_K = 9;
const VERY_EVEN_K = 7;
const EVEN_C_PER_MIN = 0.6;

/** A clear end of the climb and a level that is kept: the valve works, and where it opens can be told. */
export function regulates(findings: Findings): Opinion | null {
  const { knee, opening, level, nominalC } = findings;
  if (!knee || !opening) return null;
  if (opening.estimate < (nominalC === null ? LOWEST_OPENING_C : Math.max(LOWEST_OPENING_C, nominalC - NO_THERMOSTAT_K))) return null;
  if (madeByFan(findings, knee) || knee.sharpness < neededSharpness(findings)) return null;
  const held = level !== null && level.lastsS >= HOLDS_LONG_ENOUGH_S / 2;
  const even =
    held && level.lastsS >= HOLDS_LONG_ENOUGH_S && level.highC - level.lowC <= EVEN_K && Math.abs(level.driftCPerMin) <= EVEN_C_PER_MIN;
  const seen = seenWords(findings, knee);
  if (behindSlowEngineK(findings, knee) >= BEHIND_K) return late(findings, { opening, even, seen });
  const confidence = sureness(findings, knee);
  if (nominalC === null)
    return unmarked(opening, {
      confidence,
      seen,
      held,
      even,
      veryEven: even && level.highC - level.lowC <= VERY_EVEN_K,
      airC: findings.air.airC,
      mayHold: mayHoldLower(findings),
    });
  const offK = opening.estimate - nominalC;
  if (offK < -EARLY_K && opening.high < nominalC - TOLERANCE_K + 1) {
    if (!even || knee.sharpness < FAIRLY_SHARP || mayHoldLower(findings)) return null;
    return {
      verdict: 'opens-early',
      confidence: Math.min(confidence, 0.5 + 0.05 * (-offK - EARLY_K), wouldHaveGoneOn(findings, knee) ? 0.92 : 0.7),
      reasons: [
        ...seen,
        `That is ${Math.round(-offK)} °C below the marked ${sayTemp(nominalC)}; makers allow 2 to 3 °C.`,
        'A sensor that reads low looks the same: compare it with the intake sensor when everything is cold.',
      ],
    };
  }
  if (offK > LATE_K) return null;
  return (
    lossyWhenShut(findings, { confidence, seen }) ?? {
      verdict: 'normal',
      confidence: offK < -EARLY_K ? Math.min(confidence, 0.6) : confidence,
      reasons: seen,
    }
  );
}

/** Valves that the engine computer opens, and the first of two, hold a lower level by design. */
function mayHoldLower({ kind }: Findings): boolean {
  return kind !== 'wax' && kind !== 'unknown';
}

/** An electric fan ends a climb too, in hot air even with a valve that hangs open; the curve then falls and may come back to the same height. */
function madeByFan({ grid, level }: Findings, knee: KneeFit): boolean {
  if (knee.tempC < FAN_FROM_C) return false;
  const pulledDown = level === null || knee.tempC - level.lowC >= FAN_PULLS_K;
  if (pulledDown && knee.rateBeforeCPerS <= SLOW_CLIMB_C_PER_S) return true;
  return sawTeeth(grid, { standingOnly: false }).highs.some((high) => Math.abs(high - knee.tempC) <= FAN_K);
}

/** The hotter the air, the more an engine with an open valve looks like a sound one, and the clearer the bend has to be. */
function neededSharpness({ grid, air, start }: Findings): number {
  const warmK = Math.max(0, (air.airC ?? HOT_AIR_C) - WARM_AIR_C);
  if (grid.speedKmh || warmK === 0) return SHARP + SHARPER_PER_K * warmK;
  return start.coldStart === false ? Number.POSITIVE_INFINITY : UNMISTAKABLE;
}

/** Opens where it should but let more heat go on the way up than block and expected heater do; null when the loss is explained. */
function lossyWhenShut(
  { lossShutPerS, air, heater }: Findings,
  { confidence, seen }: { confidence: number; seen: string[] },
): Opinion | null {
  if (lossShutPerS === null || air.airC === null || heater === 'on') return null;
  const expected = TIGHT_LOSS_PER_S + SLOW_ENGINE.heaterLossPerS * heaterShare(air.airC, heater);
  const excess = lossShutPerS - expected;
  if (excess < UNEXPLAINED_PER_S) return null;
  if (heater === 'off' && excess >= 2 * UNEXPLAINED_PER_S) {
    return {
      verdict: 'leaks',
      confidence: 0.6,
      reasons: [
        ...seen,
        'With the heater off it still lost more heat on the way up than a block does: the valve passes coolant when shut.',
      ],
    };
  }
  return {
    verdict: 'normal',
    confidence: Math.min(confidence, 0.75),
    reasons: [
      ...seen,
      'On the way up it lost more heat than the weather explains: a heater on full does that, a valve that leaks when shut does too.',
    ],
  };
}

/** Whether heat was there to carry even a slow engine well past the level: without that, a heater may hold an engine down as evenly. */
function wouldHaveGoneOn({ grid, air, heater, level }: Findings, knee: KneeFit): boolean {
  if (air.airC === null || grid.heatFrom === 'time' || !level || Math.abs(level.levelC - knee.tempC) > NEAR_KNEE_K) return false;
  const slowC = slowHealthyCurve(grid, { airC: air.airC, heater, engine: 'slow' })[grid.size - 1] ?? 0;
  return knee.sharpness >= VERY_SHARP && slowC >= level.levelC + WELL_PAST_K;
}

/** Got to its level far later than a slow sound engine: with the right level it leaks when shut, otherwise this is no thermostat's work. */
function late({ nominalC }: Findings, { opening, even, seen }: { opening: Opening; even: boolean; seen: string[] }): Opinion | null {
  if (!even || nominalC === null || Math.abs(opening.estimate - nominalC) > EARLY_K) return null;
  const reasons = [
    ...seen,
    'It opens and holds, but gets there late: even a slow engine with a tight thermostat would have been there before. The valve may pass coolant when shut.',
  ];
  return { verdict: 'leaks', confidence: 0.55, reasons };
}

interface Unmarked {
  confidence: number;
  seen: string[];
  held: boolean;
  even: boolean;
  veryEven: boolean;
  airC: number | null;
  mayHold: boolean;
}

function unmarked(opening: Opening, { confidence, seen, held, even, veryEven, airC, mayHold }: Unmarked): Opinion | null {
  if (!held || (!veryEven && (airC === null || airC >= WARM_AIR_C))) return null;
  if (opening.high < UNMARKED_LOW_C) {
    if (!even || mayHold) return null;
    const reasons = [...seen, `Car thermostats are made for 76 °C and more; without the mark (stamp or catalogue) this stays a suspicion.`];
    return { verdict: 'opens-early', confidence: Math.min(confidence, 0.55), reasons };
  }
  if (opening.estimate < UNMARKED_UNUSUAL_C || (airC !== null && opening.estimate < airC + ABOVE_WARM_AIR_K)) return null;
  return {
    verdict: 'normal',
    confidence: Math.min(confidence, 0.85),
    reasons: [...seen, 'The nominal temperature was not given, so only the behaviour was judged.'],
  };
}

function seenWords({ level, kind }: Findings, knee: KneeFit): string[] {
  const words = [`The climb ends clearly at ${sayTemp(knee.tempC)} after ${sayDuration(knee.timeS)}.`];
  if (level) words.push(`From there it keeps to ${sayTemp(level.levelC)} (${Math.round(level.lowC)} to ${Math.round(level.highC)} °C).`);
  if (kind === 'unknown') words.push('The kind of thermostat is not known, so no opening temperature is given.');
  else if (kind !== 'wax') words.push('This kind of valve has no single opening temperature, so none is given.');
  return words;
}

function sureness({ grid, knee: _, level, start, nominalC, opening }: Findings, knee: KneeFit): number {
  let confidence = knee.sharpness >= VERY_SHARP ? 0.9 : knee.sharpness >= FAIRLY_SHARP ? 0.82 : 0.68;
  if (grid.durationS - knee.timeS < HOLDS_LONG_ENOUGH_S || !level) confidence -= 0.15;
  if (start.coldStart === false) confidence -= 0.05;
  if (grid.bridged.subarray(knee.window.from, knee.window.to + 1).includes(1)) confidence -= 0.15;
  if (nominalC !== null && opening && Math.abs(opening.estimate - nominalC) <= TOLERANCE_K) confidence += 0.05;
  return confidence;
}

/** How much colder than a slow sound engine it was when the bend came; a tight valve is never behind that one. */
function behindSlowEngineK({ grid, air, heater }: Findings, knee: KneeFit): number {
  if (air.airC === null || grid.heatFrom === 'time') return 0;
  const at = Math.max(0, Math.floor(knee.timeS / grid.stepS) - 1);
  return (slowHealthyCurve(grid, { airC: air.airC, heater, engine: 'slow' })[at] ?? 0) - (grid.smoothC[at] ?? 0);
}
