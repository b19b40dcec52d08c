import { describe, expect, it } from '@jest/globals';
import { thinForChart } from './thin-for-chart.ts';

describe('a log for a drawing', () => {
  const samples = Array.from({ length: 1001 }, (_, index) => ({
    timeS: 600 + index,
    coolantC: 20 + index / 20,
    ...(index > 500 && { speedKmh: 50 }),
  }));

  it('keeps to the number of points and to the curve', () => {
    const points = thinForChart(samples, 100);
    expect(points.length).toBeLessThanOrEqual(100);
    for (const { minute, tempC } of points) expect(tempC).toBeCloseTo(20 + minute * 3, 6);
    expect(points[0]?.speedKmh).toBeNull();
    expect(points[points.length - 1]?.speedKmh).toBe(50);
  });

  it('leaves a short log as it is', () => {
    expect(thinForChart(samples.slice(0, 3), 100)).toHaveLength(3);
    expect(thinForChart([], 100)).toEqual([]);
  });
});
