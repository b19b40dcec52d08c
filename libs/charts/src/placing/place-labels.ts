/** A label that wants its middle at one place along a line. */
export interface WantedLabel {
  readonly want: number;
  readonly size: number;
}

interface Room {
  readonly from: number;
  readonly to: number;
}

interface Block {
  readonly sum: number;
  readonly count: number;
}

/** Merges neighbours that would overlap and gives each group its mean: least squares with order kept (pool adjacent violators). */
const pooled = (wants: readonly number[]): number[] => {
  const blocks: Block[] = [];
  for (const want of wants) {
    let block: Block = { sum: want, count: 1 };
    for (let last = blocks.at(-1); last !== undefined && last.sum / last.count > block.sum / block.count; last = blocks.at(-1)) {
      blocks.pop();
      block = { sum: last.sum + block.sum, count: last.count + block.count };
    }
    blocks.push(block);
  }
  return blocks.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
};

/**
 * Sets labels along a line so that none overlap, each as near to where it wants to be as its neighbours allow
 * (least sum of squared shifts), all inside the room. Returns the middles in the order given.
 * Labels that together need more than the room keep their order and run past its end: make the room larger first.
 *
 * @example placeLabels([{ want: 10, size: 20 }, { want: 12, size: 20 }], { from: 0, to: 100 }); // [10, 30]
 */
export function placeLabels(labels: readonly WantedLabel[], { from, to }: Room): number[] {
  const order = labels.map((_, index) => index).sort((a, b) => (labels[a]?.want ?? 0) - (labels[b]?.want ?? 0) || a - b);
  const sizes = order.map((index) => labels[index]?.size ?? 0);
  const starts = sizes.map((_, place) => sizes.slice(0, place).reduce((sum, size) => sum + size, 0));
  const total = sizes.reduce((sum, size) => sum + size, 0);
  // Taking off the room of all earlier labels turns "no overlap" into "never falling".
  const free = pooled(order.map((index, place) => (labels[index]?.want ?? 0) - (sizes[place] ?? 0) / 2 - (starts[place] ?? 0)));
  const highest = Math.max(from, to - total);
  const middles = free.map((start, place) => Math.min(highest, Math.max(from, start)) + (starts[place] ?? 0) + (sizes[place] ?? 0) / 2);
  const result = Array.from({ length: labels.length }, () => 0);
  order.forEach((index, place) => (result[index] = middles[place] ?? 0));
  return result;
}
