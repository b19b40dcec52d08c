import type { LogAnswers } from '#libs/warm-up';

const NAMES = ['time', 'coolant', 'intake', 'ambient', 'speed', 'rpm', 'load', 'airFlow'] as const;

type Columns = NonNullable<LogAnswers['columns']>;

/**
 * Which column holds what, as an object or as pairs in one line.
 *
 * @returns Null where it can't be understood
 * @example readColumns('coolant=Temp 1, time=2') // { coolant: 'Temp 1', time: '2' }
 */
export function readColumns(raw: unknown): Columns | null | undefined {
  if (raw === undefined) return undefined;
  const pairs = typeof raw === 'string' ? pairsOf(raw.trim()) : raw;
  if (typeof pairs !== 'object' || pairs === null || Array.isArray(pairs)) return null;
  const columns: Columns = {};
  for (const [said, column] of Object.entries(pairs) as [string, unknown][]) {
    const name = NAMES.find((known) => known === said);
    if (!name || !(typeof column === 'number' || typeof column === 'string') || column === '') return null;
    columns[name] = column;
  }
  return columns;
}

function pairsOf(text: string): unknown {
  if (text.startsWith('{')) return parsed(text);
  return Object.fromEntries(
    text.split(/[,;\n]/).map((pair) => {
      const at = pair.indexOf('=');
      return at < 0 ? [pair.trim(), ''] : [pair.slice(0, at).trim(), pair.slice(at + 1).trim()];
    }),
  );
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
