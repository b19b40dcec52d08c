import { DomainError } from './domain-error.ts';

/** @example entityTag(3) // '"3"' */
export const entityTag = (version: number): string => `"${version}"`;

/** The version that a form was opened with. */
export function versionOf(typed: string | undefined): number {
  if (/^\d{1,9}$/.test(typed ?? '')) return Number(typed);
  throw new DomainError(
    'malformed',
    'version-missing',
    'This form does not say which version it changes. Reload the page and change it again.',
  );
}

/** The version that an If-Match header names. */
export function versionFrom(ifMatch: string | undefined): number {
  const match = /^"(\d{1,9})"$/.exec(ifMatch ?? '');
  if (match) return Number(match[1]);
  throw new DomainError('malformed', 'if-match-missing', 'Send the header If-Match with the ETag that you read, such as "3".');
}
