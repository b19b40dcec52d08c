import { HttpException, NotFoundException } from '@nestjs/common';
import { sqlState } from '#libs/db';
import { DomainError, type ErrorKind, type FieldError } from './domain-error.ts';

/** RFC 9457. */
export interface Problem {
  type: string;
  title: string;
  status: number;
  detail?: string;
  errors?: readonly FieldError[];
  [extra: string]: unknown;
}

function assertNever(value: never): never {
  throw new Error(`Unknown kind of error: ${String(value)}`);
}

function statusOf(kind: ErrorKind): number {
  switch (kind) {
    case 'malformed':
      return 400;
    case 'not-signed-in':
      return 401;
    case 'forbidden':
      return 403;
    case 'not-found':
      return 404;
    case 'conflict':
    case 'stale':
      return 409;
    case 'too-large':
      return 413;
    case 'impossible':
      return 422;
    case 'too-often':
      return 429;
    case 'unavailable':
      return 503;
    default:
      return assertNever(kind);
  }
}

const TITLES: Readonly<Record<number, string>> = {
  400: 'This can’t be read',
  401: 'Sign in first',
  403: 'This is not open to you',
  404: 'Nothing is here',
  409: 'Something else is there already',
  413: 'This is too large',
  415: 'This kind of content is not taken here',
  422: 'This can’t be done as asked',
  429: 'Too many tries',
  503: 'Not ready yet',
};

const titleOf = (status: number): string => TITLES[status] ?? (status < 500 ? 'This can’t be taken' : 'Something went wrong on our side');

/** What the database can't hold came through our own checks: out of range, no such date, no text, no JSON. Its sender can mend it. */
const UNSTORABLE = new Set(['22003', '22007', '22008', '22021', '22P02', '22P05']);

const unstorable = (): DomainError =>
  new DomainError('malformed', 'unstorable', 'Something you sent can’t be kept: a figure or date out of range, or a sign that is no text.');

/** The frameworks name the method and the address again, which helps nobody who mistyped it. */
const noSuchAddress = (): DomainError =>
  new DomainError('not-found', 'no-such-address', 'Nothing is at this address: check how it is written.');

function inOurWords(thrown: unknown): unknown {
  if (UNSTORABLE.has(sqlState(thrown) ?? '')) return unstorable();
  return thrown instanceof NotFoundException ? noSuchAddress() : thrown;
}

/** Anything thrown becomes a problem that says what to change; what nobody expected says nothing of our insides. */
export function toProblem(thrown: unknown): Problem {
  const error = inOurWords(thrown);
  if (error instanceof DomainError) {
    const status = statusOf(error.kind);
    const { errors, extra } = error.details;
    return {
      type: `/problems/${error.code}`,
      title: titleOf(status),
      status,
      detail: error.message,
      ...(errors ? { errors } : {}),
      ...extra,
    };
  }
  if (error instanceof HttpException) {
    const status = error.getStatus();
    return { type: 'about:blank', title: titleOf(status), status, ...(status < 500 ? { detail: error.message } : {}) };
  }
  const status = (error as { statusCode?: unknown } | null)?.statusCode; // Fastify's own: rate limit, body too large, bad JSON
  if (typeof status === 'number' && status >= 400 && status < 500) {
    return { type: 'about:blank', title: titleOf(status), status, detail: (error as Error).message };
  }
  return {
    type: 'about:blank',
    title: titleOf(500),
    status: 500,
    detail: 'It was written down. Nothing of what you sent was half-saved; try again.',
  };
}
