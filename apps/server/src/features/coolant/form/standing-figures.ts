import type { BenchField, ReadForm } from './bench-field.ts';
import { readFigure } from './read-figure.ts';

const LONGEST = 1_000;

/** The figures in force, to travel with the form: a mistyped one falls back on them. @example 'holds:7;out:3' */
export function keepFigures({ figures }: ReadForm): string {
  return Object.entries(figures)
    .flatMap(([name, figure]) => (figure === undefined ? [] : [`${name}:${Number(figure.toFixed(6))}`]))
    .join(';');
}

/** What the form carried along; anything that no field could hold is left out. */
export function standingFigures(kept: unknown, fields: readonly BenchField[]): Readonly<Record<string, number>> {
  if (typeof kept !== 'string' || kept.length > LONGEST) return {};
  const known = new Map(fields.map((field) => [field.name, field]));
  const entries = kept.split(';').flatMap((part) => {
    const [name = '', text = ''] = part.split(':');
    const field = known.get(name);
    const figure = readFigure(text);
    const isFitting = field?.kind === 'figure' && figure !== undefined && figure >= field.least && figure <= field.most;
    return isFitting ? [[name, figure] as const] : [];
  });
  return Object.fromEntries(entries);
}
