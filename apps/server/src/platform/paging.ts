/** A list longer than this is searched, not scrolled. */
export const MOST_ROWS = 50;
