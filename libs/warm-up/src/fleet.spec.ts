import { describe, expect, it } from '@jest/globals';
import { makeFleet } from '../testing/fleet.ts';
import { analyseWarmUp } from './analyse-warm-up.ts';

// Invented cars of another model family than the one in the method; seeds that no limit was set on. npm run bench prints the tables of 500.
const SEEDS = [90_210, 31_415];
const CARS = 120;

describe.each(SEEDS)('a made-up fleet, seed %s', (seed) => {
  const judged = makeFleet(seed, CARS).map(({ car, samples }) => ({ car, ...analyseWarmUp({ samples, nominalOpeningC: car.nominalC }) }));
  const of = (fault: string) => judged.filter(({ car }) => car.fault === fault);

  it('calls no healthy car faulty with confidence 0.8 or more', () => {
    const wrong = of('none').filter(({ verdict, confidence }) => !['normal', 'not-enough'].includes(verdict) && confidence >= 0.8);
    expect(wrong).toEqual([]);
  });

  it('calls no stuck-open thermostat normal', () => {
    expect(of('stuck-open').filter(({ verdict }) => verdict === 'normal')).toEqual([]);
  });

  it('answers about a fair share and finds faults of every kind', () => {
    expect(judged.filter(({ verdict }) => verdict !== 'not-enough').length).toBeGreaterThan(0.35 * CARS);
    for (const fault of ['stuck-open', 'stuck-closed', 'opens-early'] as const)
      expect(of(fault).map(({ verdict }) => verdict)).toContain(fault);
    expect(of('none').filter(({ verdict }) => verdict === 'normal').length).toBeGreaterThan(0.3 * of('none').length);
  });

  it('finds the opening temperature of most valves it reports on', () => {
    const seen = judged.flatMap(({ car, openingC }) =>
      openingC && ['none', 'opens-early'].includes(car.fault) ? [{ car, openingC }] : [],
    );
    const within2 = seen.filter(({ car, openingC }) => Math.abs(openingC.estimate - car.opensC) <= 2);
    const covered = seen.filter(({ car, openingC }) => car.opensC >= openingC.low && car.opensC <= openingC.high);
    expect(within2.length).toBeGreaterThan(0.75 * seen.length);
    expect(covered.length).toBeGreaterThan(0.8 * seen.length);
  });
});
