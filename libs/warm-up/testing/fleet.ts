import { type Sample } from '../src/types/sample.ts';
import { makeCar, type Car, type Fault } from './car.ts';
import { makeDrive, type DriveKind } from './drive.ts';
import { random, type Random } from './random.ts';
import { simulate, type EngineSecond } from './simulate.ts';

/** One made-up visit: the car with its known fault and the log that a workshop would hold in its hands. */
export interface Visit {
  car: Car;
  drive: DriveKind;
  airC: number;
  startC: number;
  lengthS: number;
  samples: Sample[];
}

const FAULTS: readonly Fault[] = [
  ...new Array<Fault>(9).fill('none'),
  ...new Array<Fault>(4).fill('stuck-open'),
  ...new Array<Fault>(2).fill('opens-early'),
  ...new Array<Fault>(2).fill('stuck-closed'),
  ...new Array<Fault>(2).fill('leaks'),
  'bad-sensor',
];
const DRIVES: readonly DriveKind[] = ['idle', 'jam', 'town', 'town', 'country', 'country', 'motorway', 'mixed', 'mixed', 'mixed'];
const RATES_HZ = [0.2, 0.5, 1, 1, 1, 2, 5, 10] as const;

/** A fleet of invented cars, climates, faults, drives and loggers; the same seed gives the same fleet. */
export function makeFleet(seed: number, count: number): Visit[] {
  const source = random(seed);
  return Array.from({ length: count }, () => makeVisit(source));
}

function makeVisit(source: Random): Visit {
  const car = makeCar(source, source.oneOf(FAULTS));
  const drive = source.oneOf(DRIVES);
  const airC = Math.max(-18, Math.min(38, source.normal(12, 11)));
  const startC = source.next() < 0.12 ? source.between(40, 85) : airC + source.between(0, 2);
  const lengthS = Math.round(source.next() < 0.15 ? source.between(150, 600) : source.between(600, 2700));
  const engine = simulate(car, makeDrive(source, drive, lengthS), { airC, startC });
  return { car, drive, airC, startC, lengthS, samples: logged(source, { car, engine, airC }) };
}

/** The driver stops the engine soon after the needle enters the red. */
function untilRed(engine: readonly EngineSecond[], redC: number): readonly EngineSecond[] {
  const at = engine.findIndex(({ sensorC }) => sensorC > redC);
  return at < 0 ? engine : engine.slice(0, at + 1);
}

function logged(source: Random, made: { car: Car; engine: EngineSecond[]; airC: number }): Sample[] {
  const { car, airC } = made;
  const engine = untilRed(made.engine, source.between(107, 122));
  const has = { speed: source.next() < 0.85, rpm: source.next() < 0.8, load: source.next() < 0.7, flow: source.next() < 0.4 };
  const air = { ambient: source.next() < 0.6, intake: source.next() < 0.75, soakK: source.between(1, 12) };
  const stepS = 1 / source.oneOf(RATES_HZ);
  const gapAtS = source.next() < 0.15 ? source.between(0, engine.length) : Number.POSITIVE_INFINITY;
  const gapS = source.between(20, 120);
  const glitches = source.next() < 0.08 ? 0.004 : 0;
  const spoil = car.fault === 'bad-sensor' ? spoiledSensor(source, engine.length) : (value: number): number => value;
  const samples: Sample[] = [];
  for (let timeS = 0; timeS < engine.length; timeS += stepS * source.between(0.98, 1.02)) {
    if (timeS > gapAtS && timeS < gapAtS + gapS) continue;
    const now = engine[Math.floor(timeS)];
    if (!now) break;
    const true_ = spoil(now.sensorC + car.sensorOffsetK, timeS);
    const coolantC = source.next() < glitches ? source.oneOf([-40, 127, 0]) : Math.round(true_ / car.sensorStepK) * car.sensorStepK;
    samples.push({
      timeS,
      coolantC,
      ...(has.speed && { speedKmh: Math.round(now.speedKmh) }),
      ...(has.rpm && { rpm: Math.round(now.rpm + source.normal(0, now.rpm * 0.01)) }),
      ...(has.load && { loadPercent: Math.max(0, Math.round(10 * source.normal(now.loadPercent, 2)) / 10) }),
      ...(has.flow && { airFlowGps: Math.max(0, Math.round(100 * now.airFlowGps * source.normal(1, 0.05)) / 100) }),
      ...(air.ambient && { ambientC: Math.round(airC + 1) }),
      ...(air.intake && { intakeC: Math.round(airC + air.soakK * Math.min(1, timeS / 300) * (now.speedKmh < 20 ? 1.6 : 0.7)) }),
    });
  }
  return samples;
}

/** Ways in which a coolant sensor or its wiring lies. */
function spoiledSensor(source: Random, lengthS: number): (value: number, timeS: number) => number {
  const fromS = source.between(0.1, 0.5) * lengthS;
  switch (source.oneOf(['frozen', 'open-circuit', 'loose', 'reads-low'] as const)) {
    case 'frozen': {
      let held: number | null = null;
      return (value, timeS) => (timeS < fromS ? value : (held ??= value));
    }
    case 'open-circuit':
      return (value, timeS) => (timeS < fromS ? value : -40);
    case 'loose':
      return (value, timeS) => (timeS < fromS || source.next() < 0.7 ? value : value + source.between(-30, 30));
    case 'reads-low': {
      const lowK = source.between(14, 25);
      return (value) => value - lowK;
    }
  }
}
