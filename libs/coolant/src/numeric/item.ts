/**
 * An item that is known to be there. Tables are complete; asking outside one is a mistake in the program.
 *
 * @param list The list
 * @param index Position, from 0
 * @throws RangeError when nothing is there
 * @example item(['a', 'b'], 1) // 'b'
 */
export function item<Item>(list: readonly Item[], index: number): Item {
  const found = list[index];
  if (found === undefined) throw new RangeError(`There is no item ${index} in a list of ${list.length}.`);
  return found;
}
