import type { HistoryEntry, StepState } from '#libs/checklist';
import { urls } from '../../../web/urls.ts';
import type { CardPage, WorkView } from './card-view.types.ts';
import { whenWords } from './when-words.ts';

/** The photos of a step, those of its findings among them. What was taken back is no longer shown. */
export function presentPhotos(page: CardPage, { history }: StepState): WorkView['photos'] {
  return history.filter(({ takenBack }) => takenBack === null).flatMap((entry) => photoOf(page, entry));
}

function photoOf(page: CardPage, { value, by, readAt }: HistoryEntry): WorkView['photos'] {
  const { photo, words } = (typeof value === 'object' && value !== null ? value : {}) as Readonly<Record<string, unknown>>;
  if (typeof photo !== 'string' || photo === '') return [];
  const who = `${page.names.get(by) ?? 'somebody'} ${whenWords(readAt, page)}`.trim();
  return [{ href: urls.photo(photo), small: urls.smallPhoto(photo), words: typeof words === 'string' ? `${words}. ${who}` : who }];
}
