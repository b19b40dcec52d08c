/** Smaller steps back are jitter; rows in them are dropped one by one. */
const NEW_RUN_BACK_S = 5;

/**
 * A file may hold several starts of the engine, each with its clock from zero. Gives the rows (from, to) of the run with the most of them.
 */
export function longestRun(timesS: Float64Array): { from: number; to: number; runs: number } {
  let best = { from: 0, to: timesS.length };
  let bestRows = 0;
  let from = 0;
  let rows = 0;
  let runs = 1;
  let last = Number.NEGATIVE_INFINITY;
  const close = (to: number): void => {
    if (rows > bestRows) {
      best = { from, to };
      bestRows = rows;
    }
  };
  timesS.forEach((timeS, row) => {
    if (Number.isNaN(timeS)) return;
    if (timeS < last - NEW_RUN_BACK_S) {
      close(row);
      from = row;
      rows = 0;
      runs += 1;
    }
    rows += 1;
    last = timeS;
  });
  close(timesS.length);
  return { ...best, runs };
}
