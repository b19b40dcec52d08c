import { describe, expect, it } from '@jest/globals';
import { ASHRAE_FREEZING } from '../data/ashrae-freezing.ts';
import { CRC_ETHYLENE } from '../spec-support/crc-ethylene.ts';
import { MELINDER_FREEZING } from '../spec-support/melinder-freezing.ts';
import { type Glycol } from '../glycol.ts';
import { FREEZING_CURVE } from './freezing-curve.ts';
import { strengthOfMass } from './strength-of-mass.ts';

const GLYCOLS: readonly Glycol[] = ['ethylene', 'propylene'];

// ASHRAE Handbook, Fundamentals (2001), freezing-point tables (read).
describe.each(GLYCOLS)('ASHRAE table, %s glycol', (glycol) => {
  const curve = FREEZING_CURVE[glycol];
  it('holds 45 rows', () => {
    expect(ASHRAE_FREEZING[glycol]).toHaveLength(45);
  });
  it.each(ASHRAE_FREEZING[glycol])('$massPercent mass % is $volumePercent volume % and freezes at $freezingPointC °C', (row) => {
    expect(curve.freezingPointC(row.volumePercent)).toBe(row.freezingPointC);
    expect(curve.volumePercentOfMass(row.massPercent)).toBe(row.volumePercent);
    expect(curve.massPercentOfVolume(row.volumePercent)).toBe(row.massPercent);
    expect(curve.volumePercentOfFreezingPoint(row.freezingPointC)).toBe(row.volumePercent);
  });
  it('falls strictly between the rows too', () => {
    const steps = Math.round(curve.endVolumePercent * 20);
    for (let step = 0; step < steps; step += 1) {
      const before = curve.freezingPointC((curve.endVolumePercent * step) / steps);
      const after = curve.freezingPointC((curve.endVolumePercent * (step + 1)) / steps);
      expect(after).toBeLessThan(before);
    }
  });
  it('stays between its neighbours', () => {
    const rows = ASHRAE_FREEZING[glycol];
    for (const [index, row] of rows.entries()) {
      const next = rows[index + 1];
      if (!next) continue;
      const middle = curve.freezingPointC((row.volumePercent + next.volumePercent) / 2);
      expect(middle).toBeLessThan(row.freezingPointC);
      expect(middle).toBeGreaterThan(next.freezingPointC);
    }
  });
});

function toleranceK(massPercent: number): number {
  if (massPercent <= 30) return 0.6;
  return massPercent <= 40 ? 1.6 : 3;
}

describe('other published freezing points', () => {
  // Å. Melinder, IIR 2010 (read).
  it.each(MELINDER_FREEZING.ethylene)('Melinder, ethylene glycol at %d mass %: %d °C', (massPercent, freezingPointC) => {
    expect(Math.abs(strengthOfMass('ethylene', massPercent).freezingPointC - freezingPointC)).toBeLessThanOrEqual(toleranceK(massPercent));
  });
  it.each(MELINDER_FREEZING.propylene)('Melinder, propylene glycol at %d mass %: %d °C', (massPercent, freezingPointC) => {
    expect(Math.abs(strengthOfMass('propylene', massPercent).freezingPointC - freezingPointC)).toBeLessThanOrEqual(1.5);
  });
  // CRC Handbook, 102nd edition (read).
  it.each(CRC_ETHYLENE)(
    'CRC, ethylene glycol at %d mass % (density %d, index %d): %d °C',
    (massPercent, _density, _index, freezingPointC) => {
      expect(Math.abs(strengthOfMass('ethylene', massPercent).freezingPointC - freezingPointC)).toBeLessThanOrEqual(
        toleranceK(massPercent),
      );
    },
  );
  it('for ethylene glycol the figures kept to are the cautious ones', () => {
    for (const [massPercent, , , freezingPointC] of CRC_ETHYLENE) {
      expect(strengthOfMass('ethylene', massPercent).freezingPointC).toBeGreaterThanOrEqual(freezingPointC - 0.1);
    }
    for (const [massPercent, freezingPointC] of MELINDER_FREEZING.ethylene) {
      expect(strengthOfMass('ethylene', massPercent).freezingPointC).toBeGreaterThanOrEqual(freezingPointC - 0.1);
    }
  });
});
