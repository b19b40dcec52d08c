import type { Built } from './variants.repository.ts';

const monthStart = (year: number, month: number): Date => new Date(Date.UTC(year, month - 1, 1));
const monthEnd = (year: number, month: number): Date => new Date(Date.UTC(year, month, 0));

/**
 * The days in which a car can have been built, as far as that is known.
 *
 * @example builtBetween({ buildYear: 2017, buildMonth: 3 }) // 1 March to 31 March 2017
 */
export function builtBetween({ buildYear, buildMonth }: { buildYear: number | null; buildMonth: number | null }): Built {
  if (buildYear === null) return { from: null, to: null };
  return { from: monthStart(buildYear, buildMonth ?? 1), to: monthEnd(buildYear, buildMonth ?? 12) };
}

/** Months as typed ('2017-03'), the last one to its end; empty is open. */
export function monthsBetween(from: string, to: string): Built {
  const parts = (typed: string): [number, number] => [Number(typed.slice(0, 4)), Number(typed.slice(5, 7))];
  return { from: from === '' ? null : monthStart(...parts(from)), to: to === '' ? null : monthEnd(...parts(to)) };
}
