import type { FastifyRequest } from 'fastify';
import { DomainError } from '../domain-error.ts';
import { originOf } from './origin.ts';
import type { RequestState } from './request-state.ts';
import { isCsrfToken } from './tokens.ts';

export const isApi = (request: FastifyRequest): boolean => request.url.startsWith('/api/');

const anotherSite = (): DomainError =>
  new DomainError('forbidden', 'another-site', 'Another site sent this. Send it from here, or without the header Origin.');

const withoutHeader = (): DomainError =>
  new DomainError(
    'forbidden',
    'not-from-our-page',
    'Send the header X-Requested-With: fetch with a session, so that another site cannot act for you.',
  );

const noLongerValid = (): DomainError =>
  new DomainError('forbidden', 'not-from-our-page', 'This form is no longer valid. Go back, reload the page and send it again.');

const pageTooOld = (): DomainError =>
  new DomainError(
    'stale',
    'page-too-old',
    'This page was opened before you last signed in, so nothing was saved. Look at it and send it again.',
  );

/**
 * A change comes from our own pages only.
 *
 * @throws page-too-old for a form of our own page whose token is of an earlier session: it goes back there with what was typed
 */
export function checkOrigin(request: FastifyRequest, state: RequestState, { needsHeader }: { needsHeader: boolean }): void {
  if (isApi(request)) {
    if (originOf(request) === 'foreign') throw anotherSite();
    const isMeant = !needsHeader || !(state.session ?? state.tablet) || request.headers['x-requested-with'] === 'fetch';
    if (!isMeant && !isCsrfToken(state.csrfSecret, request.headers['x-csrf-token'])) throw withoutHeader();
    return;
  }
  if (isCsrfToken(state.csrfSecret, state.form?.csrf)) return;
  throw state.session && state.form?.page !== undefined && originOf(request) === 'own' ? pageTooOld() : noLongerValid();
}
