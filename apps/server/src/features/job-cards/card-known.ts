import type { Template } from '#libs/checklist';
import type { Glycol, ProductLabel } from '#libs/coolant';

/** A job as its card shows it. */
export interface CardRow {
  id: string;
  number: number;
  stage: string;
  keyTag: number | null;
  version: number;
  vehicleId: string;
  definition: Template;
  /** The stage to which the desk, not the card, last brought the job. */
  startStage: string;
  vehicle: { registration: string; make: string; model: string; engineCode: string; thermostatKind: string };
  customer: { name: string };
  complaint: string;
}

/** What somebody stated about the car, as the card's figures use it. */
export interface CardFact {
  key: string;
  figure: number | null;
  unit: string;
  words: string;
  source: string;
  enteredBy: string;
  enteredAt: Date;
}

/** A coolant of the shelf, as the recipe uses it. */
export interface CardProduct {
  name: string;
  glycol: Glycol;
  technology: string;
  approval: string;
  isReadyMixed: boolean;
  label: ProductLabel | null;
  /** Volume % of product. */
  minimumPercent: number;
  maximumPercent: number;
}

/** A torque that was used on this engine before, with where it is printed. */
export interface EarlierTorque {
  jobNumber: number;
  setAt: number;
  unit: string;
  document: string;
  page: string;
}

export interface ChosenVariant {
  partNumber: string;
  name: string;
  probability: number;
}

/** What the workshop says of itself that the figures of a card depend on. */
export interface CardWorkshop {
  coldestAirC: number;
  freezeMarginK: number;
  jugMl: number;
  jugMarkMl: number;
  fillToleranceMl: number;
  topUpToleranceMl: number;
}

/** What is known beside the card itself, on the server as on a tablet. */
export interface KnownFigures {
  facts: readonly CardFact[];
  products: readonly CardProduct[];
  workshop: CardWorkshop;
  variant: ChosenVariant | null;
  earlierTorques: readonly EarlierTorque[];
}
