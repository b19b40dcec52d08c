const UUID = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/gi;

/**
 * The card's own words say who by the number of the person: people are named on the page.
 *
 * @example namePeople('already done by 0190…', names) // 'already done by Jory'
 */
export function namePeople(text: string, names: ReadonlyMap<string, string>): string {
  return text.replaceAll(UUID, (id) => names.get(id.toLowerCase()) ?? 'somebody');
}
