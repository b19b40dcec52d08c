/** Columns by distance, nearest first: a binary heap that is emptied and used again. */
export class ColumnQueue {
  private readonly columns: number[] = [];
  private readonly keys: number[] = [];
  private size = 0;

  clear(): void {
    this.size = 0;
  }

  /** Distance of the nearest entry; infinity when there is none. */
  get nearest(): number {
    return this.size === 0 ? Number.POSITIVE_INFINITY : (this.keys[0] ?? 0);
  }

  push(column: number, key: number): void {
    let hole = this.size;
    this.size += 1;
    while (hole > 0) {
      const parent = (hole - 1) >> 1;
      const parentKey = this.keys[parent] ?? 0;
      if (parentKey <= key) break;
      this.keys[hole] = parentKey;
      this.columns[hole] = this.columns[parent] ?? 0;
      hole = parent;
    }
    this.keys[hole] = key;
    this.columns[hole] = column;
  }

  /** Takes the nearest column out; ask {@link nearest} first. */
  pop(): number {
    const top = this.columns[0] ?? 0;
    this.size -= 1;
    const key = this.keys[this.size] ?? 0;
    const column = this.columns[this.size] ?? 0;
    let hole = 0;
    for (let child = 1; child < this.size; child = 2 * hole + 1) {
      if (child + 1 < this.size && (this.keys[child + 1] ?? 0) < (this.keys[child] ?? 0)) child += 1;
      const childKey = this.keys[child] ?? 0;
      if (childKey >= key) break;
      this.keys[hole] = childKey;
      this.columns[hole] = this.columns[child] ?? 0;
      hole = child;
    }
    this.keys[hole] = key;
    this.columns[hole] = column;
    return top;
  }
}
