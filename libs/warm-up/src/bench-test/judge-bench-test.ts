import { sayTemp } from '../words/say.ts';
import { WAX } from './wax-figures.ts';

/** What was seen in hot water, °C and mm; what was not looked at is left out. */
export interface BenchTest {
  stampedC: number;
  startsOpeningC?: number;
  fullLiftC?: number;
  liftMm?: number;
  /** Lift that the manual asks for; default 8 mm. */
  leastLiftMm?: number;
  shutAgainC?: number;
  /** How fast the bath was heated, °C a minute. Default 1. */
  heatingCPerMin?: number;
  /** Plain water can't get hotter than it boils. Default true. */
  plainWater?: boolean;
  altitudeM?: number;
}

export type BenchVerdict = 'conforms' | 'does-not-conform' | 'not-proven' | 'not-testable' | 'not-measured';

export interface BenchFinding {
  check: 'start of opening' | 'full lift' | 'lift' | 'closing';
  verdict: BenchVerdict;
  reason: string;
}

const NOT_MEASURED = 'Not measured.';

/**
 * Holds a hot-water test against the mark on the part. It shows whether a part works; it never shows which part the engine needs.
 *
 * @param test Temperatures in °C, lift in mm
 * @returns A finding for each of the four checks
 * @example judgeBenchTest({ stampedC: 88, startsOpeningC: 87 })[0].verdict // 'conforms'
 */
export function judgeBenchTest(test: BenchTest): BenchFinding[] {
  return [opening(test), fullLift(test), lift(test), closing(test)];
}

function lagK({ heatingCPerMin = 1 }: BenchTest): number {
  return (heatingCPerMin / 60) * WAX.lagS;
}

function opening(test: BenchTest): BenchFinding {
  const check = 'start of opening';
  const { stampedC, startsOpeningC } = test;
  if (startsOpeningC === undefined) return { check, verdict: 'not-measured', reason: NOT_MEASURED };
  const late = lagK(test);
  const reason = `Begins to open at ${sayTemp(startsOpeningC, 1)}, marked ${sayTemp(stampedC)} ± ${WAX.toleranceK} °C; heating makes it read up to ${late.toFixed(1)} °C high.`;
  const off = startsOpeningC - stampedC;
  if (off >= -WAX.toleranceK && off <= WAX.toleranceK + late) return { check, verdict: 'conforms', reason };
  const isOut = off < -WAX.widestToleranceK || off > WAX.widestToleranceK + late;
  return { check, verdict: isOut ? 'does-not-conform' : 'not-proven', reason };
}

function fullLift(test: BenchTest): BenchFinding {
  const check = 'full lift';
  const { stampedC, fullLiftC, plainWater = true, altitudeM = 0 } = test;
  const mostC = stampedC + WAX.fullLiftAboveK.most;
  const boilsC = WAX.waterBoilsC - altitudeM / WAX.metresPerDegree;
  if (fullLiftC === undefined) {
    if (plainWater && mostC > boilsC) {
      return {
        check,
        verdict: 'not-testable',
        reason: `Full lift may need ${sayTemp(mostC)}, plain water here boils at ${sayTemp(boilsC)}: not seeing it is no fault.`,
      };
    }
    return { check, verdict: 'not-measured', reason: NOT_MEASURED };
  }
  const reason = `Fully open at ${sayTemp(fullLiftC, 1)}; usual is ${WAX.fullLiftAboveK.least} to ${WAX.fullLiftAboveK.most} °C above the mark.`;
  if (fullLiftC <= mostC + lagK(test)) return { check, verdict: 'conforms', reason };
  return { check, verdict: fullLiftC > mostC + lagK(test) + WAX.widestToleranceK ? 'does-not-conform' : 'not-proven', reason };
}

function lift({ liftMm, leastLiftMm }: BenchTest): BenchFinding {
  const check = 'lift';
  if (liftMm === undefined) return { check, verdict: 'not-measured', reason: NOT_MEASURED };
  if (leastLiftMm !== undefined) {
    const reason = `Opens ${liftMm} mm, the manual asks for ${leastLiftMm} mm.`;
    return { check, verdict: liftMm >= leastLiftMm ? 'conforms' : 'does-not-conform', reason };
  }
  const reason = `Opens ${liftMm} mm; most manuals ask for ${WAX.liftMm.usual} mm, some for ${WAX.liftMm.least} or as much as 14: look it up.`;
  if (liftMm >= WAX.liftMm.usual) return { check, verdict: 'conforms', reason };
  return { check, verdict: liftMm < WAX.liftMm.least ? 'does-not-conform' : 'not-proven', reason };
}

function closing({ stampedC, shutAgainC }: BenchTest): BenchFinding {
  const check = 'closing';
  if (shutAgainC === undefined) return { check, verdict: 'not-measured', reason: NOT_MEASURED };
  const below = stampedC - shutAgainC;
  const reason = `Shut again at ${sayTemp(shutAgainC, 1)}; it should be by ${sayTemp(stampedC - WAX.shutBelowK.usual)}.`;
  if (below <= WAX.shutBelowK.usual) return { check, verdict: 'conforms', reason };
  return { check, verdict: below > WAX.shutBelowK.most ? 'does-not-conform' : 'not-proven', reason };
}
