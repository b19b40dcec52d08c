import { describe, expect, it } from '@jest/globals';
import { traySizeL } from './tray-size.ts';

describe('traySizeL', () => {
  it.each([
    [6.2, 0, 8],
    [6, 0, 7],
    [6.2, 0.4, 7],
    [6.2, -0.1, 8],
    [1, 3, 1],
  ])('of a system of %s L with %s L missing is %s L', (capacityL, missingL, trayL) => {
    expect(traySizeL(capacityL, missingL)).toBe(trayL);
  });
});
