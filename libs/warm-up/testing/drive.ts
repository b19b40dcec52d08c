import { type Random } from './random.ts';

export type DriveKind = 'idle' | 'jam' | 'town' | 'country' | 'motorway' | 'mixed';

/** One second of a drive: road speed, acceleration, engine running or stopped at the lights. */
export interface DriveSecond {
  speedMs: number;
  accelerationMs2: number;
  gradient: number;
  running: boolean;
}

interface Pace {
  cruiseKmh: readonly [number, number];
  stopShare: number;
  legS: readonly [number, number];
  stopS: readonly [number, number];
}

const PACES: Record<Exclude<DriveKind, 'mixed' | 'idle'>, Pace> = {
  jam: { cruiseKmh: [6, 25], stopShare: 0.9, legS: [10, 40], stopS: [10, 70] },
  town: { cruiseKmh: [28, 55], stopShare: 0.7, legS: [20, 90], stopS: [5, 60] },
  country: { cruiseKmh: [50, 95], stopShare: 0.15, legS: [60, 240], stopS: [5, 30] },
  motorway: { cruiseKmh: [90, 135], stopShare: 0.02, legS: [200, 900], stopS: [20, 60] },
};

/** A drive second by second: legs of cruising with stops between, at the pace of the road. */
export function makeDrive(source: Random, kind: DriveKind, lengthS: number): DriveSecond[] {
  const drive: DriveSecond[] = [];
  const stopStart = source.next() < 0.2;
  let speedMs = 0;
  let order = kind;
  while (drive.length < lengthS) {
    if (kind === 'mixed') order = source.oneOf(['jam', 'town', 'town', 'country', 'country', 'motorway', 'idle'] as const);
    if (order === 'idle' || order === 'mixed') {
      speedMs = push(drive, { speedMs, targetMs: 0, holdS: source.between(60, 240), stopStart: false, gradient: 0 });
      continue;
    }
    const pace = PACES[order];
    const targetMs = source.between(pace.cruiseKmh[0], pace.cruiseKmh[1]) / 3.6;
    const gradient = source.normal(0, 0.008);
    speedMs = push(drive, { speedMs, targetMs, holdS: source.between(pace.legS[0], pace.legS[1]), stopStart, gradient });
    if (source.next() < pace.stopShare) {
      const holdS = source.between(pace.stopS[0], pace.stopS[1]);
      speedMs = push(drive, { speedMs, targetMs: 0, holdS, stopStart, gradient: 0 });
    }
  }
  return drive.slice(0, lengthS);
}

interface Leg {
  speedMs: number;
  targetMs: number;
  holdS: number;
  stopStart: boolean;
  gradient: number;
}

function push(drive: DriveSecond[], leg: Leg): number {
  let { speedMs } = leg;
  for (let second = 0; second < leg.holdS; second += 1) {
    const accelerationMs2 = Math.max(-2, Math.min(1.3, (leg.targetMs - speedMs) * 0.4));
    speedMs = Math.max(0, speedMs + accelerationMs2);
    // Stop-start systems wait until the engine is warm; five minutes stands for that here.
    const stopped = leg.stopStart && speedMs < 0.2 && second > 4 && drive.length > 300;
    drive.push({ speedMs, accelerationMs2, gradient: leg.gradient, running: !stopped });
  }
  return speedMs;
}
