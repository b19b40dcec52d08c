import { type DroppedRows } from './types.ts';

const SHOWN = 10;

/** Keeps account of the rows left out: how many for each reason, and where the first few stand. */
export class DropAccount {
  private readonly byReason = new Map<string, DroppedRows>();

  add(reason: string, line: number): void {
    const entry = this.byReason.get(reason) ?? { reason, count: 0, lines: [] };
    entry.count += 1;
    if (entry.lines.length < SHOWN) entry.lines.push(line);
    this.byReason.set(reason, entry);
  }

  report(): DroppedRows[] {
    return [...this.byReason.values()].sort((left, right) => right.count - left.count);
  }
}
