import { pidNumber } from './pid-quantity.ts';
import { QUANTITIES, type Quantity } from './quantity.ts';
import { recogniseColumn } from './recognise-column.ts';
import { type LogAnswers } from './types.ts';

/** A channel's name in a file with one reading per row. */
export interface LongName {
  key: string;
  quantity: Quantity;
  header: string;
  byPid: boolean;
  /** The cell that holds the channel's number, where there is one. */
  pidText: string | null;
}

/** The best name for each quantity among the names that occur; what the person said comes first. */
export function bestNames(cellsByKey: ReadonlyMap<string, readonly string[]>, answers: LogAnswers): LongName[] {
  const known = [...cellsByKey].map(([key, cells]) => ({ key, cells, all: cells.map(recogniseColumn) }));
  return QUANTITIES.flatMap((quantity) => {
    const told = answers.columns?.[quantity];
    let best: (LongName & { score: number }) | null = null;
    for (const { key, cells, all } of known) {
      const isTold = told !== undefined && cells.some((cell) => cell.toLowerCase() === String(told).toLowerCase());
      const recognised = all.find((one) => one.quantity === quantity) ?? (isTold ? all[0] : undefined);
      if (!recognised) continue;
      const score = isTold ? Number.POSITIVE_INFINITY : recognised.score;
      if (best && score <= best.score) continue;
      const pidText = cells.find((cell) => pidNumber(cell) !== null) ?? null;
      const header = cells.filter((cell) => cell !== '').join(' ');
      best = { key, quantity, header, byPid: recognised.byPid || pidText !== null, pidText, score };
    }
    return best ? [best] : [];
  });
}
