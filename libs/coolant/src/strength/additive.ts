/** What the product's label says of one mixture: so many parts of product and of water, and where it freezes. */
export interface ProductLabel {
  readonly partsProduct: number;
  /** 0 for a product sold ready-mixed. */
  readonly partsWater: number;
  readonly freezingPointC: number;
}

/**
 * What is poured in beside water: concentrate or ready-mixed. Exactly one way of saying its content; its own freezing
 * point is not one, because strong glycol freezes warmer again.
 */
export interface AdditiveInput {
  /** Volume % of pure glycol. */
  readonly volumePercent?: number | undefined;
  /** Mass % of pure glycol. */
  readonly massPercent?: number | undefined;
  readonly label?: ProductLabel | undefined;
  /** Concentrate of unknown content: the pessimistic fallback is used and said. */
  readonly isContentUnknown?: boolean | undefined;
  /** A fluid sold as waterless is refused. */
  readonly isWaterless?: boolean | undefined;
}

/** A resolved additive. */
export interface Additive {
  /** Mass % of pure glycol in the product. */
  readonly massPercent: number;
  /** Volume % of pure glycol: the published table's column, above it unmixed volumes at 20 °C. */
  readonly volumePercent: number;
  readonly densityKgPerL: number;
  /** True where it is no stronger than mixtures in the table, so that % of product has no meaning. */
  readonly isReadyMixed: boolean;
  readonly basis: 'stated' | 'label' | 'fallback';
}
