export class CardStepDto {
  key!: string;
  title!: string;
  phase!: string;

  /** The hold point that it is the evidence of. */
  hold!: string | null;

  /** open, done, not-applicable, passed, passed-without, taken-back or let-go. */
  state!: string;

  /** The evidence that stands. */
  value!: object | null;
  by!: string | null;
  readAt!: string | null;

  /** Why it stands like this, or why it can't be done yet. */
  why!: string | null;

  /** Whether it can be done now. */
  can!: boolean;
}

export class CardDifferenceDto {
  actionId!: string | null;
  code!: string;
  why!: string;
  isSettled!: boolean;
}

/** A job card as it stands. */
export class CardDto {
  id!: string;
  /** The job's number, counted from 1. */
  number!: number;
  template!: { key: string; version: number; name: string };
  stage!: string;
  keyTag!: number | null;
  vehicle!: { registration: string; make: string; model: string; engineCode: string };
  steps!: CardStepDto[];

  /** By hold point: shut, passed or passed-without, whether it is spent, and why. */
  holds!: object;

  /** The figures of the card by name: litres, readings, choices, levels, lists, fills, torques. */
  facts!: object;
  differences!: CardDifferenceDto[];
  waits!: object[];
  debts!: object[];
  findings!: object[];

  /** Doubts for a person to look at. */
  checks!: string[];
}
