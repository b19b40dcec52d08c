import type { Action } from '#libs/checklist';
import type { CardRow, KnownFigures } from './card-known.ts';

/** A card as a tablet keeps it: what it needs to fold and show it without the server. Dates come as text. */
export interface CardSheet {
  row: CardRow;
  actions: readonly Action[];
  known: KnownFigures;
  lastReceived: Date | null;
}
