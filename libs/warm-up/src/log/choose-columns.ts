import { QUANTITIES, type Quantity } from './quantity.ts';
import { recogniseColumn, type Recognised } from './recognise-column.ts';
import { type LogAnswers } from './types.ts';

/** Which column holds what. */
export interface Chosen {
  recognised: Recognised[];
  byQuantity: Partial<Record<Quantity, number>>;
  /** Columns that may tell the time, best first. */
  times: number[];
  ignored: string[];
  locations: string[];
}

/** Picks the best column for each quantity by its header; what the person said comes first. */
export function chooseColumns(headers: readonly string[], answers: LogAnswers): Chosen {
  const recognised = headers.map(recogniseColumn);
  const byQuantity: Partial<Record<Quantity, number>> = {};
  for (const quantity of QUANTITIES) {
    const told = columnTold(headers, answers.columns?.[quantity]);
    const found = told ?? bestFor(recognised, quantity);
    if (found !== null) byQuantity[quantity] = found;
  }
  const used = new Set(Object.values(byQuantity));
  const toldTime = columnTold(headers, answers.columns?.time);
  const times = recognised
    .map(({ timeScore }, index) => ({ index, timeScore }))
    .filter(({ index, timeScore }) => timeScore > 0 && !used.has(index))
    .sort((left, right) => right.timeScore - left.timeScore)
    .map(({ index }) => index);
  return {
    recognised,
    byQuantity,
    times: toldTime === null ? times : [toldTime, ...times.filter((index) => index !== toldTime)],
    ignored: headers.filter(
      (header, index) =>
        header !== '' && !used.has(index) && !times.includes(index) && index !== toldTime && !recognised[index]?.isLocation,
    ),
    locations: headers.filter((_, index) => recognised[index]?.isLocation && !used.has(index)),
  };
}

function bestFor(recognised: readonly Recognised[], quantity: Quantity): number | null {
  let best = -1;
  recognised.forEach((column, index) => {
    if (column.quantity === quantity && column.score > (recognised[best]?.score ?? 0)) best = index;
  });
  return best < 0 ? null : best;
}

/** A column named by its header or its number from 1; null when nothing was said or it isn't there. */
function columnTold(headers: readonly string[], told: string | number | undefined): number | null {
  if (told === undefined) return null;
  const byName = headers.findIndex((header) => header.trim().toLowerCase() === String(told).trim().toLowerCase());
  if (byName >= 0) return byName;
  const number = Number(told);
  return Number.isInteger(number) && number >= 1 && number <= headers.length ? number - 1 : null;
}
