import { type Car } from './car.ts';
import { type DriveSecond } from './drive.ts';

/** What happens under the bonnet, second by second; nothing is rounded yet. */
export interface EngineSecond {
  speedKmh: number;
  rpm: number;
  loadPercent: number;
  airFlowGps: number;
  sensorC: number;
  valve: number;
}

const STEP_S = 0.5;
const RADIATOR_CELLS = 3;
const RADIATOR_KJK = 9;
const AIR_DENSITY = 1.2;
const ROLLING = 0.011;

/**
 * A made-up engine of another family than the one in the analysis: fuel burnt from road load, metal, coolant and oil apart, a
 * radiator in three cells so that its cold water comes back as a slug, a valve with backlash. Invented values, no published table.
 */
export function simulate(car: Car, drive: readonly DriveSecond[], world: { airC: number; startC: number }): EngineSecond[] {
  let metalC = world.startC;
  let coolantC = world.startC;
  let oilC = world.startC;
  let waxC = world.startC;
  let sensorC = world.startC;
  let valve = car.leastOpening;
  let fanOn = false;
  const cells = new Array<number>(RADIATOR_CELLS).fill(world.airC);
  const seconds: EngineSecond[] = [];
  for (const { speedMs, accelerationMs2, gradient, running } of drive) {
    const rpm = running ? engineSpeed(speedMs) : 0;
    const forceN =
      car.massKg * (accelerationMs2 + 9.81 * (ROLLING * Math.min(1, speedMs) + gradient)) + 0.5 * AIR_DENSITY * car.dragM2 * speedMs ** 2;
    const wheelKW = Math.max(0, (forceN * speedMs) / 1000);
    const fuelKW = running ? car.idleFuelKW * (0.55 + 0.45 * (rpm / 800)) + wheelKW / 0.36 : 0;
    const share = car.heatShare - car.heatShareFall * Math.min(1, wheelKW / 30);
    const flow = running ? Math.min(car.pumpTop, car.pumpIdle * (rpm / 800)) : 0.05;
    const airSide = car.radiatorStill + car.radiatorAtSpeed * Math.min(1.2, (speedMs / 30) ** 0.7) + (fanOn ? car.fan : 0);
    for (let step = 0; step < 1 / STEP_S; step += 1) {
      const toOil = 0.12 * (metalC - oilC);
      const toCoolant = car.metalToCoolant * (0.5 + rpm / 3000) * (metalC - coolantC);
      const throughRadiator = flow * valve;
      const back = cells[RADIATOR_CELLS - 1] ?? world.airC;
      metalC +=
        (STEP_S * (share * fuelKW - toCoolant - toOil - (car.blockToAir + 0.0002 * speedMs) * (metalC - world.airC))) / car.metalKJK;
      oilC += (STEP_S * (toOil - (0.006 + 0.0006 * speedMs) * (oilC - world.airC))) / car.oilKJK;
      coolantC += (STEP_S * (toCoolant - car.heaterKWK * (coolantC - world.airC) - throughRadiator * (coolantC - back))) / car.coolantKJK;
      let from = coolantC;
      for (let cell = 0; cell < RADIATOR_CELLS; cell += 1) {
        const here = cells[cell] ?? world.airC;
        const gain = throughRadiator * (from - here) - (airSide / RADIATOR_CELLS) * (here - world.airC);
        cells[cell] = here + (STEP_S * gain) / (RADIATOR_KJK / RADIATOR_CELLS);
        from = here;
      }
      waxC += (STEP_S * (coolantC - waxC)) / car.waxLagS;
      valve = nextValve(car, waxC, valve);
      sensorC += (STEP_S * (coolantC - sensorC)) / car.sensorLagS;
    }
    if (coolantC > car.fanOnC) fanOn = true;
    if (coolantC < car.fanOnC - 5) fanOn = false;
    const airFlowGps = running ? (car.diesel ? 4 + 0.012 * rpm + 0.3 * wheelKW : (fuelKW / 43) * 14.7) : 0;
    const loadPercent = running ? Math.min(100, 18 + (65 * wheelKW) / (4 + rpm / 60)) : 0;
    seconds.push({ speedKmh: speedMs * 3.6, rpm, loadPercent, airFlowGps, sensorC, valve });
  }
  return seconds;
}

/** Backlash: the valve stays where it is while the wax is between the opening and the closing line. */
function nextValve(car: Car, waxC: number, valve: number): number {
  const opening = lift(waxC, car.opensC, car.spanK);
  const closing = lift(waxC + car.hysteresisK, car.opensC, car.spanK);
  const free = Math.max(opening, Math.min(closing, valve));
  return Math.max(car.leastOpening, Math.min(car.mostOpening, free));
}

function lift(waxC: number, opensC: number, spanK: number): number {
  const open = Math.max(0, Math.min(1, (waxC - opensC) / spanK));
  return open ** 1.3;
}

function engineSpeed(speedMs: number): number {
  if (speedMs < 1.5) return 800;
  const perGear = [130, 75, 50, 37, 29];
  for (const factor of perGear) {
    const rpm = speedMs * 3.6 * factor;
    if (rpm < 2300) return Math.max(900, rpm);
  }
  return speedMs * 3.6 * 29 * 0.9;
}
