/** The same numbers at every first start: a small generator with a fixed seed (mulberry32, public domain). */
export interface Random {
  /** 0 ≤ x < 1. */
  next: () => number;
  /** Whole, both ends included. */
  between: (low: number, high: number) => number;
  pick: <T>(from: readonly T[]) => T;
  chance: (probability: number) => boolean;
}

export function createRandom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  return {
    next,
    between: (low, high) => low + Math.floor(next() * (high - low + 1)),
    chance: (probability) => next() < probability,
    pick: (from) => {
      const found = from[Math.floor(next() * from.length)];
      if (found === undefined) throw new Error('Nothing to pick from');
      return found;
    },
  };
}
