import type { PaperToEnter } from './documents.service.ts';
import type { ImportRow } from './imports.repository.ts';
import type { EnteredLine } from './reconciled.types.ts';

/**
 * The papers that a file holds: a statement is one, named by its file and last day; a list of credits is as many credit notes as it has
 * numbers, each dated by its latest line.
 *
 * @param today for lines without a day
 */
export function papersOf(
  { id: importId, kind, fileName, supplier }: Pick<ImportRow, 'id' | 'kind' | 'fileName' | 'supplier'>,
  lines: readonly EnteredLine[],
  today: string,
): PaperToEnter[] {
  const lastDay = (own: readonly EnteredLine[]): string =>
    own
      .flatMap(({ date }) => date ?? [])
      .sort()
      .at(-1) ?? today;
  const byFile = `${fileName.replace(/\.[^.]+$/, '').slice(0, 45) || 'file'}, ${lastDay(lines)}`;
  const groups = new Map<string, EnteredLine[]>();
  for (const line of lines) {
    const number = (kind === 'statement' || line.number === '' ? byFile : line.number).slice(0, 60);
    groups.set(number, [...(groups.get(number) ?? []), line]);
  }
  return [...groups].map(([number, own]) => ({
    kind: kind === 'statement' ? 'statement' : 'credit-note',
    supplierId: supplier.id,
    number,
    datedOn: lastDay(own),
    gross: null,
    importId,
    lines: own,
  }));
}
