/** Counted stock (coolant in mL, packs, clips): never a unit, only amounts. */
export const STOCK_KINDS = ['received', 'found', 'used', 'sold', 'scrapped'] as const;

export type StockKind = (typeof STOCK_KINDS)[number];

export interface StockMovement {
  readonly kind: StockKind;
  /** Whole pieces or mL. */
  readonly amount: number;
}

export interface StockAccount {
  readonly totals: Readonly<Record<StockKind, number>>;
  /** received + found − used − sold − scrapped; negative when more left than is known to have come. */
  readonly onHand: number;
  readonly problem: string | null;
}

/**
 * What is on hand of something that is only counted: receipts + found = used on jobs + sold + scrapped + on hand.
 *
 * @param movements Movements in whole pieces or mL
 * @returns Totals and what is on hand; a problem in words when the count can't be right
 * @example stockAccount([{ kind: 'received', amount: 20_000 }, { kind: 'used', amount: 1_150 }]).onHand // 18850
 */
export function stockAccount(movements: readonly StockMovement[]): StockAccount {
  const good = movements.filter(({ amount }) => Number.isSafeInteger(amount) && amount > 0);
  const wrong = movements.find((one) => !good.includes(one));
  const total = (kind: StockKind): number => good.filter((one) => one.kind === kind).reduce((sum, { amount }) => sum + amount, 0);
  const totals = {
    received: total('received'),
    found: total('found'),
    used: total('used'),
    sold: total('sold'),
    scrapped: total('scrapped'),
  };
  const onHand = totals.received + totals.found - totals.used - totals.sold - totals.scrapped;
  return { totals, onHand, problem: wrong ? `${wrong.amount} is no whole amount above nothing.` : shortage(onHand) };
}

function shortage(onHand: number): string | null {
  return onHand < 0 ? `${-onHand} more left than came in: count again and enter what was found.` : null;
}
