import type { Action } from '#libs/checklist';
import type { CardSheet } from '../../src/features/job-cards/card-sheet.ts';
import type { TabletFacts } from '../../src/features/tablets/tablet-facts.ts';

/** Who holds the tablet: proven by a sign-in, or only picked while there was no network. */
export interface Holder {
  readonly staffId: string;
  readonly signIn: string | null;
}

/** What the tablet knows of itself and of the house, from its last contact. */
export interface DeviceFacts extends Pick<TabletFacts, 'tablet' | 'timeZone' | 'onePersonSite' | 'people'> {
  /** The server's clock less this tablet's. */
  readonly offsetMs: number;
  /** By the server's clock. */
  readonly contactAt: string;
}

interface Waiting {
  /** Its place in the queue, given by the store. */
  readonly order?: number;
  readonly id: string;
  readonly card: string;
}

/** An action that waits to be sent. `offsetMs`: by how much the clock was thought to be wrong when it was written. */
export interface WaitingAction extends Waiting {
  readonly type: 'action';
  readonly action: Action;
  readonly signIn: string | null;
  readonly offsetMs: number;
}

/** A photo that waits to be sent, before the action that names it. */
export interface WaitingPhoto extends Waiting {
  readonly type: 'photo';
  readonly bytes: ArrayBuffer;
  readonly by: string;
  readonly signIn: string | null;
  readonly step: string;
  readonly words: string;
  readonly takenAt: string;
}

export type Entry = WaitingAction | WaitingPhoto;

/** What the server will never take, or has put aside, with the reason: it stays on the tablet until a person has seen it. */
export interface Unsaved {
  readonly id: string;
  readonly card: string;
  readonly words: string;
  readonly why: string;
}

/** A card as it came from the server; its dates are still text. */
export type StoredSheet = CardSheet;
