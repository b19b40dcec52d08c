/** Nothing is drawn further outside its scale than this many scale lengths. */
const FAR = 8;

/**
 * Maps values to px. Halves before it subtracts, so that no pair of finite values overflows; a scale of no length maps to its middle.
 *
 * @example linearScale({ low: 10, high: 70, start: 0, end: 600 })(40); // 300
 */
export function linearScale({
  low,
  high,
  start,
  end,
}: {
  low: number;
  high: number;
  start: number;
  end: number;
}): (value: number) => number {
  const halfSpan = high / 2 - low / 2;
  return (value) => {
    if (halfSpan === 0) return start / 2 + end / 2;
    const share = (value / 2 - low / 2) / halfSpan;
    return start + Math.max(-FAR, Math.min(FAR, share)) * (end - start);
  };
}
