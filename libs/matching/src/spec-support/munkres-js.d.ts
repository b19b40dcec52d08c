declare module 'munkres-js' {
  /** The cheapest assignment of a table of costs, as pairs of row and column. */
  export default function munkres(costs: readonly (readonly number[])[]): [row: number, column: number][];
}
