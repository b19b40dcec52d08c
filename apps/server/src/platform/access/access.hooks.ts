import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { requestContext } from '../request-context.ts';
import { takeFormMarks } from './form-marks.ts';
import { ownCookie } from './own-cookie.ts';
import { requestState, setRequestState } from './request-state.ts';
import { SESSION_COOKIE, type Sessions } from './sessions.ts';
import { newCsrfSecret } from './tokens.ts';

const DOOR_COOKIE = 'door';
/** What `newCsrfSecret` makes; anything else did not come from us. */
const SECRET = /^[\w-]{20,}$/;

/** Files are the same for everybody: they cost no look at the session. */
const isFile = (request: FastifyRequest): boolean => request.url.startsWith('/assets/');
const isPage = (request: FastifyRequest): boolean => !request.url.startsWith('/api/') && !isFile(request);

/** Forms of visitors without a session are checked against a secret of their own cookie. */
function doorSecret(request: FastifyRequest, reply: FastifyReply): string {
  const known = request.cookies[DOOR_COOKIE];
  if (known !== undefined && SECRET.test(known)) return known;
  const secret = newCsrfSecret();
  if (isPage(request)) reply.setCookie(DOOR_COOKIE, secret, ownCookie(request));
  return secret;
}

/** Before any route: who is this, what hidden marks does the form carry; then the rest runs inside the request's context. */
export function registerAccessHooks(fastify: FastifyInstance, sessions: Sessions): void {
  fastify.addHook('preHandler', async (request, reply) => {
    if (isFile(request)) return;
    const token = request.cookies[SESSION_COOKIE];
    const session = token === undefined ? undefined : await sessions.find(token);
    const body: unknown = request.body;
    const isForm = request.method === 'POST' && isPage(request);
    const form = isForm ? takeFormMarks(typeof body === 'object' && body !== null ? (body as Record<string, unknown>) : {}) : undefined;
    // What a signed-in person saw is not for whoever sits down at that screen next.
    if (session) reply.header('cache-control', 'no-store');
    setRequestState(request, { session, csrfSecret: session?.csrfSecret ?? doorSecret(request, reply), form });
  });
  fastify.addHook('preHandler', (request, _reply, done) => {
    requestContext.run({ staff: requestState(request)?.session?.staff, requestKey: undefined }, done);
  });
}
