import type { FastifyRequest } from 'fastify';

/** Secure wherever the browser came by TLS; a workshop's plain LAN address would refuse it. */
export function ownCookie(request: FastifyRequest): { path: string; httpOnly: true; sameSite: 'lax'; secure: boolean } {
  return { path: '/', httpOnly: true, sameSite: 'lax', secure: request.protocol === 'https' };
}
