/** One tap, as it left the tablet. */
export class CardActionDto {
  /**
   * Of its own, a UUID: an action sent again under the same id is the same action.
   * @example 3f0f6d0e-5a53-4f0a-9a0c-0c1f2b7f6a11
   */
  id!: string;

  /**
   * tick, record, pass, pass-without, not-applicable, take-back, pour-jug, start-timer, stop-timer, note, photo, finding,
   * go-back, wait, wait-over, let-go, confirm-name or settle-difference.
   * @example record
   */
  kind!: string;

  /**
   * The step's key; a phase's key for working time; "card" for what belongs to the whole card.
   * @example drained
   */
  step!: string;

  /**
   * What the step asks for, as JSON.
   * @example { "litres": 4.6 }
   */
  value?: object | null;

  /**
   * When it was read or done by the device's clock, with its offset.
   * @example 2026-06-09T09:24:00+02:00
   */
  readAt!: string;

  /** Who did it; left out: the signed-in person. Another person counts as said to be theirs until they confirm it. */
  by?: string;

  /** session or picked-offline. */
  byProof?: string;

  /** The enrolled device. */
  deviceId?: string;

  /** The device's own count of its actions. */
  deviceSeq?: number;
}

/** Actions of one card in the order in which they were done, at most 200 a call. */
export class CardActionsDto {
  actions!: CardActionDto[];
}

export class AcknowledgedDto {
  id!: string;

  /** Why it does not count, for a person to look at; null where it fits. */
  difference!: string | null;
}

export class AcknowledgedActionsDto {
  acknowledged!: AcknowledgedDto[];
}
