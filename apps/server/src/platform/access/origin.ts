import type { FastifyRequest } from 'fastify';

/**
 * Which site a request says it comes from. Browsers say it with every POST; programs without a page, and old browsers, say nothing.
 * An address that can't be read, such as `null`, is foreign.
 */
export function originOf(request: FastifyRequest): 'unsaid' | 'own' | 'foreign' {
  const { origin } = request.headers;
  if (origin === undefined) return 'unsaid';
  return URL.canParse(origin) && new URL(origin).host === request.host ? 'own' : 'foreign';
}
