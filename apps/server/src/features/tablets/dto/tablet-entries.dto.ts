/** One entry of a tablet's outbox: an action of a card, with its card and who is proven to have done it. */
export class TabletEntryDto {
  /**
   * Of its own, a UUID: an entry sent again under the same id is the same entry.
   * @example 3f0f6d0e-5a53-4f0a-9a0c-0c1f2b7f6a12
   */
  id!: string;

  /** The tablet's own count of its entries, without gaps. */
  deviceSeq?: number;

  /** The job whose card it belongs to. */
  card!: string;

  /** What was done, as for the actions of a card. */
  kind!: string;

  /** The step's key; a phase's key for working time; "card" for what belongs to the whole card. */
  step!: string;

  /** What the step asks for, as JSON. */
  value?: object | null;

  /**
   * When it was read or done, with its offset.
   * @example 2026-06-09T09:24:00+02:00
   */
  readAt!: string;

  /** Who did it. */
  by!: string;

  /** session where the person was signed in by PIN, else picked-offline. */
  byProof!: string;

  /** The sign-in on this tablet that proves it. */
  signIn?: string;
}

/** What waited on a tablet, in the order in which it was done, at most 200 a call. */
export class TabletEntriesDto {
  actions!: TabletEntryDto[];
}

export class TabletAnswerDto {
  id!: string;

  /** kept; difference: on its card, but it does not fit; stray: no card could take it, and it is kept for a person. */
  state!: string;

  /** Why it does not count; null where it does. */
  why!: string | null;
}

export class TabletAnswersDto {
  answers!: TabletAnswerDto[];
}
