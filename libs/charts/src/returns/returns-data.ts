/** One unit on its way back. */
export interface ReturnTag {
  /** The money, written by the caller, such as '€41.00'. */
  readonly amountText: string;
  /** `sent`: at the supplier, `days` since it left. `shelf`: still here, `days` until it must leave; below zero is too late. */
  readonly side: 'sent' | 'shelf';
  readonly days: number;
  /** Under the tag, such as 'key 18' or 'Thursday'. */
  readonly note: string;
  /** Look here now: leaves soon. */
  readonly isUrgent?: boolean;
}

/** One supplier's row. */
export interface ReturnsSupplier {
  readonly name: string;
  readonly terms: string;
  /** Money still out, written by the caller. */
  readonly outText: string;
  /** Days within which the supplier credits; null is not agreed. */
  readonly creditDays: number | null;
  readonly units: readonly ReturnTag[];
}

/** What is out at suppliers and what must leave. */
export interface ReturnsTimelineData {
  /** On the plumb line, such as 'Tue 9'. */
  readonly todayText: string;
  readonly suppliers: readonly ReturnsSupplier[];
}
