/** A variant that may be the right one. */
export interface OrderCandidate {
  readonly id: string;
  /** Probability of being the right one; what is missing to 1 over all candidates fits none. */
  readonly probability: number;
  /** Purchase price of one, net. */
  readonly price: number;
  /** What the supplier keeps of an unneeded one: 100 where it can't go back, such as opened units of 'unopened only' terms. */
  readonly restockingPercent: number;
}

/**
 * What is done when nothing of the first order fits. *blind*: the next order is planned by probability again.
 * *informed*: the removed part is in hand, so the next order is exactly the right one.
 */
export type Recourse = 'blind' | 'informed';

export interface OrderQuestion {
  readonly candidates: readonly OrderCandidate[];
  /** Carriage of one order. */
  readonly carriage: number;
  /** Cost of one return trip, however many pieces go back. */
  readonly returnCarriage: number;
  /** Cost of one more round: the customer's car a day later. */
  readonly delayCost: number;
  /** Cost of the bay that a stripped car holds, when the car is stripped before anything is ordered. Default 0. */
  readonly bayHoldCost?: number | undefined;
  /** Default blind. */
  readonly recourse?: Recourse | undefined;
}

export interface OrderPlanLine {
  /** The variants to order in the first round. */
  readonly order: readonly string[];
  /** Expected cost over and above the price of the right part, not rounded. */
  readonly expectedCost: number;
}

/** Where the cheapest order changes as the cost of a delay rises. */
export interface OrderFlip {
  readonly delayCost: number;
  /** The cheapest order just below that cost. */
  readonly from: readonly string[];
  /** The cheapest order just above. */
  readonly to: readonly string[];
}

export interface OrderPlanAnswer {
  /** Every non-empty first order, cheapest first; equally dear ones with fewer pieces first. */
  readonly plans: readonly OrderPlanLine[];
  readonly best: OrderPlanLine;
  /** The usual practice: order all of them. */
  readonly orderAll: OrderPlanLine;
  /** Open the car first, then order exactly one. */
  readonly stripFirst: { readonly expectedCost: number };
  /** What knowing the right variant beforehand would save: the most that one more reading can be worth. */
  readonly perfectInformationValue: number;
  readonly flips: readonly OrderFlip[];
  /** Probability that none of the candidates fits. */
  readonly noneProbability: number;
}
