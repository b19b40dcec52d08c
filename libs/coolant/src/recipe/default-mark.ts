/** Distance of the marks on a jug, mL, where nobody says otherwise. Common practice, no source. */
export const DEFAULT_MARK_ML = 50;
