const DEEPEST = 12;

/**
 * The same text for the same JSON whatever the order of its keys, so that one action sent twice is known again even
 * after a database has reordered it. Never fails: what is no JSON is named by its type.
 *
 * @param value Any value
 * @returns Text that is equal for equal JSON
 * @example canonicalText({ b: 1, a: [true] }) // '{"a":[true],"b":1}'
 */
export function canonicalText(value: unknown, depth = 0): string {
  if (value === null) return 'null';
  if (typeof value === 'string' || typeof value === 'boolean') return JSON.stringify(value);
  if (typeof value === 'number') return Number.isFinite(value) ? JSON.stringify(value) : 'null';
  if (typeof value !== 'object') return `"<${typeof value}>"`;
  if (depth > DEEPEST) return '"<deep>"';
  if (Array.isArray(value)) return `[${(value as readonly unknown[]).map((item) => canonicalText(item, depth + 1)).join(',')}]`;
  const parts = Object.entries(value)
    .filter(([, item]) => item !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, item]) => `${JSON.stringify(key)}:${canonicalText(item, depth + 1)}`);
  return `{${parts.join(',')}}`;
}
