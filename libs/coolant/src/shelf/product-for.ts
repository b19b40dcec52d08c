/**
 * The product that goes into a car, for its card, its bench and its bill alike: the shelf's first of the technology stated for the
 * car, else the first on the shelf.
 *
 * @param products in the shelf's order
 * @param technology as stated for the car, such as 'organic'
 * @returns null where the shelf is empty
 * @example productFor([{ technology: 'organic' }, { technology: 'hybrid' }], 'hybrid') // { technology: 'hybrid' }
 */
export function productFor<Product extends { technology: string }>(
  products: readonly Product[],
  technology: string | undefined,
): Product | null {
  return products.find((product) => product.technology === technology) ?? products[0] ?? null;
}
