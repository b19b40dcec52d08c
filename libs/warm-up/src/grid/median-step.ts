const LOOKED_AT = 2000;

/** Usual time between neighbouring readings: the median of up to 2,000 steps spread over the log, which is enough however long it is. */
export function medianStepS(timeAt: (index: number) => number, count: number): number {
  if (count < 2) return 0;
  const every = Math.max(1, Math.floor((count - 1) / LOOKED_AT));
  const steps = new Float64Array(Math.floor((count - 2) / every) + 1);
  for (let place = 0; place < steps.length; place += 1) steps[place] = timeAt(place * every + 1) - timeAt(place * every);
  return steps.sort()[Math.floor(steps.length / 2)] ?? 0;
}
