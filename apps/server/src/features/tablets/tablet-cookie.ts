import type { FastifyReply, FastifyRequest } from 'fastify';
import { TABLET_COOKIE, TABLET_COOKIE_S } from '../../platform/access/devices.ts';
import { ownCookie } from '../../platform/access/own-cookie.ts';

/** Set anew at every contact, so that it lasts as long as the tablet is in use. */
export function keepTabletCookie(request: FastifyRequest, reply: FastifyReply, token = request.cookies[TABLET_COOKIE]): void {
  if (token !== undefined) reply.setCookie(TABLET_COOKIE, token, { ...ownCookie(request), maxAge: TABLET_COOKIE_S });
}
