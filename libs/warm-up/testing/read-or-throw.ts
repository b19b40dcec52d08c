import { readLog } from '../src/log/read-log.ts';
import { type LogAnswers, type LogReading, type UnderstoodColumn } from '../src/log/types.ts';

/** The lines of a file from single ones and lists. */
export function lines(...parts: (string | string[])[]): string {
  return parts.flat().join('\n');
}

/** A log that must be readable. */
export function read(text: string, answers: LogAnswers = {}): Extract<LogReading, { ok: true }> {
  const log = readLog(text, answers);
  if (!log.ok) throw new Error(`${log.problem} ${JSON.stringify(log.asks)}`);
  return log;
}

/** A log that must be turned away. */
export function refused(text: string, answers: LogAnswers = {}): Extract<LogReading, { ok: false }> {
  const log = readLog(text, answers);
  if (log.ok) throw new Error('was read');
  return log;
}

export function columnOf({ understood }: Pick<LogReading, 'understood'>, quantity: string): UnderstoodColumn | undefined {
  return understood.columns.find((column) => column.quantity === quantity);
}
