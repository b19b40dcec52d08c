import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { requestState } from '../platform/access/request-state.ts';
import { csrfToken } from '../platform/access/tokens.ts';
import { type Flashes, flashFor, refusalLeftOver } from '../platform/pages/flash.ts';
import { homeOf, isIn, roomsFor } from './rooms.ts';
import { urls } from './urls.ts';

const LIGHTS = ['day', 'sun', 'bay'] as const;
export const LIGHT_COOKIE = 'light';

interface Shell {
  csrf: string;
  path: string;
  light: string;
  isDemo: boolean;
  isSignedIn: boolean;
  plan?: object;
  flash?: object;
  /** Read when the page is drawn: only then it is known what the page itself shows. */
  readonly refusal?: readonly { message: string }[];
}

function shellFor(request: FastifyRequest, csrfSecret: string, isDemo: boolean): Shell {
  const staff = requestState(request)?.session?.staff;
  const light = LIGHTS.find((known) => known === request.cookies[LIGHT_COOKIE]) ?? 'day';
  const shell = { csrf: csrfToken(csrfSecret), path: request.url, light, isDemo, isSignedIn: staff !== undefined };
  if (!staff) return shell;
  const rooms = roomsFor(staff.role).map((room) => ({ ...room, current: isIn(room, request.url) }));
  const here = rooms.find(({ current }) => current)?.label;
  const notice = flashFor(request)?.notice;
  return {
    ...shell,
    plan: {
      rooms,
      who: staff.displayName,
      place: isDemo ? 'demo workshop' : undefined,
      here,
      home: homeOf(staff.role),
      signOut: urls.signOut,
    },
    ...(notice === undefined ? {} : { flash: { kind: 'done', text: notice } }),
    get refusal() {
      return refusalLeftOver(request).map(({ message }) => ({ message }));
    },
  };
}

/** What every page shows round its own content: put into the reply, where the view engine finds it. */
export function registerShellHooks(fastify: FastifyInstance, { flashes, isDemo }: { flashes: Flashes; isDemo: boolean }): void {
  fastify.addHook('preHandler', async (request: FastifyRequest, reply: FastifyReply) => {
    const state = requestState(request);
    if (!state || request.url.startsWith('/api/')) return;
    (reply as FastifyReply & { locals: object }).locals = shellFor(request, state.csrfSecret, isDemo);
    if (request.method === 'GET' && state.session && flashFor(request)) await flashes.clear(state.session.staff.tokenHash);
  });
}
