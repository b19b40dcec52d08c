import type { TypedForm } from './typed-form.ts';

/** The longest list of a card that a form takes. */
export const MOST_LINES = 60;

/** One name to a line; an empty list has to be said, so that an empty tap is no answer. */
export function linesFrom(form: TypedForm): { items: string[] } {
  if (form.isTicked('none')) return { items: [] };
  const items = form
    .text('items')
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
  if (items.length === 0) form.wrong('items', 'Name at least one, or say that there is nothing to name.');
  return { items };
}

/** Of a list that comes back: what was ticked as left off, each with its reason. */
export function leftOffFrom(form: TypedForm): { items: string[]; leftOff: { item: string; why: string }[] } {
  const leftOff = Array.from({ length: MOST_LINES }, (_, index) => index).flatMap((index) => {
    const item = form.text(`left-${index}`);
    if (item === '') return [];
    return [{ item, why: form.needed(`why-${index}`, `Say why “${item}” is left off.`) }];
  });
  return { items: [], leftOff };
}
