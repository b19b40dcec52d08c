import type { Understood } from '#libs/warm-up';
import { minutesText } from '../proof/told-log.ts';

/** What was read out of a file's form, for a person to check. */
export interface UnderstoodView {
  facts: { term: string; said: string }[];
  columns: { what: string; header: string; unit: string; from: string; values: string }[];
  dropped: { reason: string; count: string; lines: string }[];
  notes: string[];
}

const QUANTITY_WORDS: Readonly<Record<Understood['columns'][number]['quantity'], string>> = {
  time: 'Time',
  coolant: 'Coolant',
  intake: 'Intake air',
  ambient: 'Outside air',
  speed: 'Road speed',
  rpm: 'Engine speed',
  load: 'Engine load',
  airFlow: 'Air flow',
};
const LAYOUT_WORDS = { wide: 'a column each', long: 'one reading a row', paired: 'pairs of time and value' } as const;
const SEPARATOR_WORDS: Readonly<Record<string, string>> = { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'upright line' };

const count = (value: number): string => value.toLocaleString('en-GB').replaceAll(',', '\u202f');

export function presentUnderstood(understood: Understood): UnderstoodView {
  const { layout, separator, decimalMark, rows, samples, durationS, ratePerS, gaps } = understood;
  const facts = [
    { term: 'Layout', said: layout === null ? '' : LAYOUT_WORDS[layout] },
    { term: 'Between cells', said: SEPARATOR_WORDS[separator ?? ''] ?? '' },
    { term: 'Decimal mark', said: decimalMark === null ? '' : decimalMark === '.' ? 'point' : 'comma' },
    { term: 'Rows', said: rows === 0 ? '' : `${count(rows)}${samples === 0 ? '' : `, of them ${count(samples)} readings of the coolant`}` },
    { term: 'Length', said: durationS > 0 ? minutesText(durationS) : '' },
    { term: 'Rate', said: ratePerS === null ? '' : rateText(ratePerS) },
    { term: 'Gaps', said: gaps.length === 0 ? '' : gaps.slice(0, 5).map(gapText).join('; ') + (gaps.length > 5 ? '; and more' : '') },
    { term: 'Places', said: placesText(understood.locationColumnsDropped) },
    { term: 'Not used', said: understood.ignoredColumns.slice(0, 30).join(', ') },
  ];
  return {
    facts: facts.filter(({ said }) => said !== ''),
    columns: understood.columns.map(({ quantity, header, unit, unitFrom, values }) => ({
      what: QUANTITY_WORDS[quantity],
      header,
      unit: unit ?? 'not said',
      from: unitFrom ?? '',
      values: count(values),
    })),
    dropped: understood.dropped.map(({ reason, count: rowCount, lines }) => ({
      reason,
      count: count(rowCount),
      lines: lines.length === 0 ? '' : `line ${lines.join(', ')}${rowCount > lines.length ? ' …' : ''}`,
    })),
    notes: understood.notes,
  };
}

const rateText = (perS: number): string =>
  perS >= 1 ? `${perS.toFixed(1)} readings a second` : `a reading every ${(1 / perS).toFixed(1)} s`;

const gapText = ({ fromS, toS }: { fromS: number; toS: number }): string => `${minutesText(toS - fromS)} after ${minutesText(fromS)}`;

const placesText = (columns: readonly string[]): string =>
  columns.length === 0 ? '' : `left out and not kept: ${columns.slice(0, 20).join(', ')}`;
