import type { Address } from '../address-of.ts';

/** The same page with another figure in one field. */
export function withFigure({ path, query }: Address, name: string, text: string): string {
  const changed = new URLSearchParams(query);
  changed.set(name, text);
  changed.delete('was');
  return `${path}?${changed.toString()}`;
}
