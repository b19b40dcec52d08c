import { sqlState } from '#libs/db';

/**
 * What the log says of a fault. The database client quotes values in its messages, so of its errors only the code, the model and
 * the place in the program are told: customers have no place in a log.
 */
export function faultLine(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  if (!error.name.startsWith('PrismaClient')) return error.stack ?? error.message;
  const { code, meta } = error as { code?: unknown; meta?: { modelName?: unknown } };
  const facts = [code, meta?.modelName, sqlState(error)].filter((fact) => typeof fact === 'string');
  return [[error.name, ...facts].join(' '), ...framesOf(error.stack ?? '')].join('\n');
}

const framesOf = (stack: string): string[] => stack.split('\n').filter((line) => /^\s+at .+:\d+:\d+\)?$/.test(line));
