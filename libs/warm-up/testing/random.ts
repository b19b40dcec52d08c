/** Seeded numbers for the made-up fleet, so that every run drives the same cars (mulberry32, public domain). */
export interface Random {
  next(): number;
  between(low: number, high: number): number;
  oneOf<T>(items: readonly T[]): T;
  /** Roughly normal: the sum of four uniform numbers, cut at ±3.4 standard deviations. */
  normal(mean: number, deviation: number): number;
}

export function random(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return {
    next,
    between: (low, high) => low + (high - low) * next(),
    oneOf: <T>(items: readonly T[]): T => {
      const item = items[Math.floor(next() * items.length)];
      if (item === undefined) throw new Error('nothing to choose from');
      return item;
    },
    normal: (mean, deviation) => mean + deviation * Math.sqrt(3) * (next() + next() + next() + next() - 2),
  };
}
