import { describe, expect, it } from '@jest/globals';
import { decodePid } from './decode-pid.ts';
import { PID_FORMULAS } from './pid-formulas.ts';

// Formulas: SAE J1979 / ISO 15031-5, table read; byte examples computed from them.
describe('bytes of service 01', () => {
  it.each([
    [0x05, '7B', 83, '°C'],
    [0x05, '00', -40, '°C'],
    [0x05, 'FF', 215, '°C'],
    [0x0c, '1AF8', 1726, '1/min'],
    [0x0c, '1A F8', 1726, '1/min'],
    [0x0d, '32', 50, 'km/h'],
    [0x0f, '3c', 20, '°C'],
    [0x10, '05DC', 15, 'g/s'],
    [0x1f, '0258', 600, 's'],
    [0x46, '2D', 5, '°C'],
  ])('channel %i: %s is %d %s', (pid, hex, value, unit) => {
    expect(decodePid(pid, hex)).toMatchObject({ value, unit });
  });

  it('gives engine load as a share of 255', () => {
    expect(decodePid(0x04, '40')?.value).toBeCloseTo(25.1, 1);
    expect(decodePid(0x04, 'FF')?.value).toBe(100);
  });

  it.each([
    [0x05, '7B00'],
    [0x0c, '1A'],
    [0x05, 'GG'],
    [0x05, ''],
    [0x99, '00'],
  ])('channel %i does not take %p', (pid, hex) => {
    expect(decodePid(pid, hex)).toBeNull();
  });

  it('names every channel once', () => {
    expect(new Set(PID_FORMULAS.map(({ pid }) => pid)).size).toBe(PID_FORMULAS.length);
  });
});
