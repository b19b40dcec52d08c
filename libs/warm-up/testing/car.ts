import { type Random } from './random.ts';

export type Fault = 'none' | 'opens-early' | 'stuck-open' | 'stuck-closed' | 'leaks' | 'bad-sensor';

/** An invented car. Powers in kW, conductances in kW/K, heat capacities in kJ/K, masses in kg. */
export interface Car {
  fault: Fault;
  nominalC: number;
  opensC: number;
  spanK: number;
  hysteresisK: number;
  waxLagS: number;
  /** Valve opening that nothing closes any more: 0.004 is a bleed hole, 1 a thermostat left out. */
  leastOpening: number;
  mostOpening: number;
  metalKJK: number;
  coolantKJK: number;
  oilKJK: number;
  metalToCoolant: number;
  blockToAir: number;
  heaterKWK: number;
  pumpIdle: number;
  pumpTop: number;
  radiatorStill: number;
  radiatorAtSpeed: number;
  fan: number;
  fanOnC: number;
  massKg: number;
  dragM2: number;
  idleFuelKW: number;
  heatShare: number;
  heatShareFall: number;
  diesel: boolean;
  sensorLagS: number;
  sensorOffsetK: number;
  sensorStepK: number;
}

/** What the radiator side does under each fault; a bad sensor sits on a sound thermostat. */
export function makeCar(source: Random, fault: Fault): Car {
  const diesel = source.next() < 0.4;
  const size = source.between(0.75, 1.5);
  const nominalC = source.oneOf([80, 82, 83, 85, 87, 88, 88, 89, 91, 92]);
  const opening = nominalC + Math.max(-2, Math.min(2, source.normal(0, 0.9)));
  const early = source.between(9, 22);
  return {
    fault,
    nominalC,
    opensC: fault === 'opens-early' ? opening - early : opening,
    spanK: source.between(9, 14),
    hysteresisK: source.between(1, 4),
    waxLagS: source.between(6, 22),
    leastOpening: leastOpening(source, fault),
    mostOpening: fault === 'stuck-closed' ? source.between(0, 0.006) : 1,
    metalKJK: source.between(28, 42) * size,
    coolantKJK: source.between(14, 20) * size,
    oilKJK: source.between(6, 10) * size,
    metalToCoolant: source.between(1, 2) * size,
    blockToAir: source.between(0.008, 0.02) * size,
    heaterKWK: source.next() < 0.5 ? 0 : source.between(0.02, 0.085),
    pumpIdle: source.between(0.25, 0.8),
    pumpTop: source.between(2, 3.5),
    radiatorStill: source.between(0.02, 0.06),
    radiatorAtSpeed: source.between(0.28, 0.6) * size,
    fan: source.between(0.3, 0.6),
    fanOnC: source.between(95, 101),
    massKg: source.between(1050, 2000),
    dragM2: source.between(0.6, 0.9),
    idleFuelKW: (diesel ? source.between(5, 8) : source.between(7, 11)) * Math.sqrt(size),
    heatShare: diesel ? source.between(0.26, 0.34) : source.between(0.32, 0.42),
    heatShareFall: source.between(0.1, 0.17),
    diesel,
    sensorLagS: source.between(2, 9),
    sensorOffsetK: Math.max(-1.5, Math.min(1.5, source.normal(0, 0.6))),
    sensorStepK: source.oneOf([1, 1, 1, 0.75, 0.5, 0.1]),
  };
}

function leastOpening(source: Random, fault: Fault): number {
  if (fault === 'stuck-open') return source.between(0.5, 1);
  if (fault === 'leaks') return source.between(0.05, 0.2);
  return source.between(0.001, 0.012);
}
