import { randomUUID } from 'node:crypto';
import path from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import request from 'supertest';
import { createApp } from '../../apps/server/src/app.setup.ts';
import { BaysController } from '../../apps/server/src/features/bookings/bays.controller.ts';
import { CustomersApiController } from '../../apps/server/src/features/customers/customers-api.controller.ts';
import { ACCESS } from '../../apps/server/src/platform/access/access.decorator.ts';
import { addressOf, changesState, type DeclaredRoute, declaredRoutes, isApi, registeredRoutes, routeKey } from '../support/routes.ts';
import { type Agent, apiHeaders, formMarks, openTestApp, SECRET, type StaffName, type TestApp } from '../support/test-app.ts';

const NOW = '2026-06-09T08:00:00Z';
const ROLES = { desk: 'desk', tech: 'technician', owner: 'owner' } as const;
const STAFF = Object.keys(ROLES) as StaffName[];
/** Calculations and the session itself: another site gains nothing by them, and other programs need no mark for them. */
const CHANGES_NOTHING = /^\/api\/v1\/(session$|coolant\/|fitment\/|warm-up\/|vehicles\/vin-check$|invoices\/totals$)/;
/** They end the session that asks: tried on their own below. */
const ENDS_SESSION = ['POST /sign-out', 'DELETE /api/v1/session'];

let test: TestApp;
let staff: Record<StaffName, string>;
let routes: DeclaredRoute[];
beforeAll(async () => {
  test = await openTestApp();
  routes = declaredRoutes(test.app);
});
beforeEach(async () => {
  test.clock.set(NOW);
  staff = await test.furnish();
});
afterAll(() => test.close());

interface Visitor {
  who: StaffName | 'nobody';
  agent: Agent;
  csrf: string;
}

async function visit(who: Visitor['who']): Promise<Visitor> {
  const agent = who === 'nobody' ? request.agent(test.http) : await test.as(who);
  const { text } = await agent.get(who === 'nobody' ? '/sign-in' : '/bays').expect(200);
  return { who, agent, csrf: formMarks(text)['_csrf'] ?? '' };
}

const isOpenTo = ({ access }: DeclaredRoute, who: Visitor['who']): boolean =>
  access === 'anyone' || (who !== 'nobody' && access !== undefined && access !== 'tablet' && access.includes(ROLES[who]));

/** As our own pages would ask, with everything right but the content. */
function ask({ agent, csrf }: Visitor, route: DeclaredRoute) {
  const address = addressOf(route);
  if (!changesState(route)) return agent.get(address);
  if (isApi(route)) return send(agent, route, address).set(apiHeaders()).send({});
  return agent.post(address).type('form').send({ _csrf: csrf, _key: randomUUID() });
}

function send(agent: Agent, { method }: DeclaredRoute, address: string) {
  if (method === 'PUT') return agent.put(address);
  if (method === 'PATCH') return agent.patch(address);
  return method === 'DELETE' ? agent.delete(address) : agent.post(address);
}

/** What the answer says about the way in, in one word. */
function verdict({ status, headers, body }: { status: number; headers: Record<string, string>; body: unknown }): string {
  if (status >= 500) return `failed with ${status}`;
  const type = (body as { type?: string } | null)?.type ?? '';
  if (status === 401) return type === '/problems/not-signed-in' ? 'sign in first' : `401 ${type}`;
  if (status === 303 && /^\/sign-in(\?back=|$)/.test(headers['location'] ?? '')) return 'sign in first';
  return status === 403 ? 'closed' : 'open';
}

describe('the routes of the application', () => {
  it('are all known here', () => {
    const declared = new Set(routes.map(routeKey));
    expect(declared.size).toBe(routes.length);
    expect([...declared]).toEqual(
      expect.arrayContaining(['GET /counter', 'POST /counter/customers/:/edit', 'PUT /api/v1/customers/:', 'DELETE /api/v1/session']),
    );
    const others = registeredRoutes(test.app)
      .filter(({ method }) => method !== 'HEAD')
      .map(routeKey)
      .filter((key) => !declared.has(key));
    // Files, and what the API is: nothing of the workshop is in them.
    expect(others.sort()).toEqual(['GET /api/v1/openapi.json', 'GET /assets/*', 'GET /sw.js']);
  });

  it('say who may call', () => {
    expect(routes.filter(({ access }) => access === undefined).map(routeKey)).toEqual([]);
  });

  it('are open to strangers only at the door', () => {
    const open = routes.filter(({ access }) => access === 'anyone').map(routeKey);
    expect(open.sort()).toEqual([
      'GET /',
      'GET /api/v1/health',
      'GET /first-owner',
      'GET /sign-in',
      'GET /tablet',
      'GET /tablet/shell',
      'POST /api/v1/session',
      'POST /first-owner',
      'POST /light',
      'POST /sign-in',
      'POST /tablet/enrol',
      'POST /tablet/sign-in',
    ]);
  });

  it('keep the office for the owner, and counter and till from technicians', () => {
    const openTo = (who: StaffName, start: RegExp) =>
      routes.filter((route) => start.test(route.path) && isOpenTo(route, who)).map(routeKey);
    expect(openTo('desk', /^\/office/)).toEqual([]);
    expect(openTo('tech', /^\/(office|counter|till)|^\/api\/v1\/customers/)).toEqual([]);
  });

  it('ask for a key but for calculations, the session and cards, whose actions have their own', () => {
    const without = routes.filter((route) => isApi(route) && changesState(route) && route.withoutKey).map(routeKey);
    const known =
      /^(POST|PUT|DELETE) \/api\/v1\/(session|coolant\/[\w-]+|fitment\/[\w-]+|vehicles\/vin-check|invoices\/totals|warm-up\/analyses|job-cards\/:\/(actions|photos\/:)|tablet\/(actions|sign-in|lock|jobs\/:\/photos\/:))$/;
    expect(without.filter((key) => !known.test(key))).toEqual([]);
  });

  it.each(['nobody', ...STAFF] as const)('let %s in where they say so and nowhere else', async (who) => {
    const visitor = await visit(who);
    const wrong: string[] = [];
    for (const route of routes.filter((each) => !ENDS_SESSION.includes(routeKey(each)))) {
      const found = verdict(await ask(visitor, route));
      const due = isOpenTo(route, who) ? 'open' : who === 'nobody' ? 'sign in first' : 'closed';
      const leadsToDoor = route.access === 'anyone' && found === 'sign in first' && !changesState(route);
      if (found !== due && !leadsToDoor) wrong.push(`${routeKey(route)}: ${found}, not ${due}`);
    }
    expect(wrong).toEqual([]);
  });

  it.each(['nobody', ...STAFF] as const)('take no change from another site in the name of %s', async (who) => {
    const { agent } = await visit(who);
    const foreign = (await visit(who === 'owner' ? 'desk' : 'owner')).csrf;
    const taken: string[] = [];
    for (const route of routes.filter((each) => changesState(each) && isOpenTo(each, who))) {
      if (isApi(route) && (who === 'nobody' || CHANGES_NOTHING.test(route.path))) continue; // no session to misuse, nothing to do with it
      const address = addressOf(route);
      const marks = { _key: randomUUID(), _page: '/bays' };
      const answers = isApi(route)
        ? [
            await send(agent, route, address).set('idempotency-key', randomUUID()).send({}),
            await send(agent, route, address).set({ 'idempotency-key': randomUUID(), 'x-csrf-token': foreign }).send({}),
          ]
        : [
            await agent.post(address).type('form').send(marks),
            await agent
              .post(address)
              .type('form')
              .send({ ...marks, _csrf: foreign }),
            await agent.post(address).set('content-type', 'text/plain').send('_csrf=x'),
          ];
      answers.forEach(({ status }) => status === 403 || status === 415 || taken.push(`${routeKey(route)}: ${status}`));
    }
    expect(taken).toEqual([]);
  });

  it('of the API calculate for a session without further marks', async () => {
    const tech = await test.as('tech');
    const calculations = routes.filter((route) => isApi(route) && changesState(route) && CHANGES_NOTHING.test(route.path));
    expect(calculations.length).toBeGreaterThan(10);
    for (const route of calculations.filter((each) => !each.path.endsWith('/session'))) {
      const { status } = await tech.post(addressOf(route)).send({});
      // An empty body is answered or called incomplete, never turned away at the door.
      expect(`${routeKey(route)} ${status}`).toMatch(/ (200|400)$/);
    }
  });

  it('of the API refuse a change without its key', async () => {
    const owner = await test.as('owner');
    const changing = routes.filter((route) => isApi(route) && changesState(route) && !route.withoutKey);
    expect(changing.length).toBeGreaterThan(0);
    for (const route of changing) {
      for (const key of [undefined, '', '1', 'x'.repeat(36)]) {
        const call = send(owner, route, addressOf(route)).set('x-requested-with', 'fetch');
        const answer = await (key === undefined ? call : call.set('idempotency-key', key)).send({});
        expect([routeKey(route), answer.status, (answer.body as { type: string }).type]).toEqual([
          routeKey(route),
          400,
          '/problems/key-missing',
        ]);
      }
    }
  });
});

describe('a route that says nothing', () => {
  it.each([
    ['page', BaysController, '/bays'],
    ['call', CustomersApiController, '/api/v1/customers'],
  ])('is a %s closed to everybody', async (_what, controller, address) => {
    const declared: unknown = Reflect.getMetadata(ACCESS, controller);
    expect(declared).toBeDefined();
    Reflect.deleteMetadata(ACCESS, controller);
    try {
      for (const name of STAFF) await (await test.as(name)).get(address).expect(403);
      await request(test.http).get(address).expect(403);
    } finally {
      Reflect.defineMetadata(ACCESS, declared, controller);
    }
    await (await test.as('owner')).get(address).expect(200);
  });
});

const cookiesOf = (answer: { headers: Record<string, unknown> }): string[] => (answer.headers['set-cookie'] as string[] | undefined) ?? [];

describe('cookies', () => {
  it('of the session are read by no script and sent by no other site’s forms', async () => {
    const [cookie = ''] = cookiesOf(await request(test.http).post('/api/v1/session').send({ name: 'desk', secret: SECRET }));
    expect(cookie).toMatch(/^runwarm=[\w-]{43};/);
    expect(cookie).toContain('; HttpOnly');
    expect(cookie).toContain('; SameSite=Lax');
    expect(cookie).toContain('; Path=/');
    expect(cookie).not.toContain('Domain=');
  });

  it('hold what the database does not: it keeps a hash', async () => {
    const [cookie = ''] = cookiesOf(await request(test.http).post('/api/v1/session').send({ name: 'desk', secret: SECRET }));
    const token = /^runwarm=([^;]+)/.exec(cookie)?.[1];
    const rows = await test.db.session.findMany();
    expect(rows).toHaveLength(1);
    expect(JSON.stringify(rows)).not.toContain(token);
  });

  it('go by TLS alone where the browser came by TLS', async () => {
    const behindProxy = await createApp({
      connection: test.connection,
      clock: test.clock,
      publicDir: path.resolve('dist/public'),
      worksByItself: false,
      production: true,
      trustProxy: true,
      logger: false,
    });
    try {
      await behindProxy.init();
      await behindProxy.getHttpAdapter().getInstance().ready();
      const agent = request.agent(behindProxy.getHttpServer()).set('x-forwarded-proto', 'https');
      const door = await agent.get('/sign-in').expect(200);
      const signedIn = await agent.post('/api/v1/session').send({ name: 'desk', secret: SECRET }).expect(200);
      const light = await agent
        .post('/light')
        .set(
          'cookie',
          cookiesOf(door)
            .map((cookie) => cookie.split(';')[0] ?? '')
            .join('; '),
        )
        .type('form')
        .send({ ...formMarks(door.text), light: 'sun' });
      const cookies = [door, signedIn, light].flatMap(cookiesOf);
      expect(cookies).toHaveLength(3);
      expect(cookies.filter((cookie) => !cookie.includes('; Secure'))).toEqual([]);
    } finally {
      await behindProxy.close();
    }
  });
});

describe('headers', () => {
  it('let a page run and load nothing but what is ours', async () => {
    const { agent } = await visit('owner');
    for (const route of routes.filter((each) => !changesState(each) && !each.path.endsWith('.pdf'))) {
      const { headers } = await agent.get(addressOf(route));
      const policy = headers['content-security-policy'] ?? '';
      expect(policy).toContain("default-src 'none'");
      expect(policy).toContain("script-src 'self'");
      expect(policy).toContain("frame-ancestors 'none'");
      expect(policy).not.toMatch(/unsafe|https?:|\*/);
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['referrer-policy']).toMatch(/^(no-referrer|same-origin)$/);
      expect(headers['x-powered-by']).toBeUndefined();
    }
  });

  it('keep what a signed-in person saw out of shared and later eyes', async () => {
    const { agent } = await visit('owner');
    const kept: string[] = [];
    for (const route of routes.filter((each) => !changesState(each) && each.access !== 'anyone')) {
      const { headers } = await agent.get(addressOf(route));
      if (!/no-store|private/.test(headers['cache-control'] ?? '')) kept.push(routeKey(route));
    }
    expect(kept).toEqual([]);
  });

  it('let files of the site be kept: their names change with what is in them', async () => {
    const { text } = await request(test.http).get('/sign-in').expect(200);
    const style = /href="(\/assets\/site\.[^"]+\.css)"/.exec(text)?.[1] ?? '';
    const answer = await request(test.http).get(style).expect(200);
    expect(answer.headers['cache-control']).toMatch(/immutable/);
    expect(answer.headers['set-cookie']).toBeUndefined();
  });
});

describe('a session', () => {
  it('ends on signing out, for whoever has its cookie', async () => {
    const [cookie = ''] = cookiesOf(await request(test.http).post('/api/v1/session').send({ name: 'desk', secret: SECRET }));
    const withCookie = (call: request.Test) => call.set('cookie', cookie.split(';')[0] ?? '');
    const page = await withCookie(request(test.http).get('/counter')).expect(200);
    const out = await withCookie(request(test.http).post('/sign-out')).type('form').send(formMarks(page.text, 'sign-out'));
    expect(out.headers['location']).toBe('/sign-in');
    expect(cookiesOf(out).join()).toMatch(/runwarm=;/);
    await withCookie(request(test.http).get('/counter')).expect(303);
    expect(await test.db.session.count()).toBe(0);
  });

  it('ends by the API too', async () => {
    const desk = await test.as('desk');
    await desk.delete('/api/v1/session').expect(204);
    await desk.get('/api/v1/customers').expect(401);
  });

  it('ends with its account, and does not come back with it', async () => {
    const desk = await test.as('desk');
    const owner = await test.as('owner');
    const post = async (action: string) => {
      const { text } = await owner.get('/office/people').expect(200);
      await owner.post(`/office/people/${staff.desk}/${action}`).type('form').send(formMarks(text)).expect(303);
    };
    await post('close');
    await desk.get('/counter').expect(303);
    await request(test.http).post('/api/v1/session').send({ name: 'desk', secret: SECRET }).expect(401);
    await post('open');
    await desk.get('/counter').expect(303);
    await test.as('desk');
  });

  it('ends after twelve idle hours, and after a week of work', async () => {
    const desk = await test.as('desk');
    test.clock.pass({ minutes: 11 * 60 });
    await desk.get('/counter').expect(200);
    test.clock.pass({ minutes: 11 * 60 });
    await desk.get('/counter').expect(200);
    test.clock.pass({ minutes: 12 * 60 + 1 });
    await desk.get('/counter').expect(303);
    const busy = await test.as('desk');
    for (let hours = 0; hours < 7 * 24; hours += 8) {
      await busy.get('/counter').expect(200);
      test.clock.pass({ minutes: 8 * 60 });
    }
    await busy.get('/counter').expect(303);
  });

  it('is a new one at each signing in, whatever cookie came along', async () => {
    const signIn = (cookie: string) => request(test.http).post('/api/v1/session').set('cookie', cookie).set('x-requested-with', 'fetch');
    const [first = ''] = cookiesOf(await signIn('runwarm=chosen-by-somebody').send({ name: 'desk', secret: SECRET }).expect(200));
    expect(first).not.toContain('chosen-by-somebody');
    const [second = ''] = cookiesOf(
      await signIn(first.split(';')[0] ?? '')
        .send({ name: 'desk', secret: SECRET })
        .expect(200),
    );
    expect(second.split(';')[0]).not.toBe(first.split(';')[0]);
  });

  it.each(['//elsewhere.example', 'https://elsewhere.example', '/\\elsewhere.example', 'javascript:alert(1)', '/\t/elsewhere.example'])(
    'leads to no other site: %s',
    async (back) => {
      const agent = request.agent(test.http);
      const { text } = await agent.get('/sign-in').query({ back }).expect(200);
      const answer = await agent
        .post('/sign-in')
        .type('form')
        .send({ ...formMarks(text), name: 'desk', secret: SECRET, back });
      expect(answer.status).toBe(303);
      expect(answer.headers['location']).toBe('/counter');
    },
  );
});

describe('guessing', () => {
  const guess = (name: string, secret = 'wrong') => request(test.http).post('/api/v1/session').send({ name, secret });

  it('tells nobody which names exist', async () => {
    const [known, unknown] = [await guess('owner').expect(401), await guess('nobody-of-that-name').expect(401)];
    expect(known.body).toEqual(unknown.body);
  });

  it('stops after eight failures for a name however it is written, and goes on a quarter of an hour later', async () => {
    for (const name of ['owner', 'OWNER', ' owner', 'owner ', 'Owner', 'oWner', 'owneR', 'ownEr']) await guess(name).expect(401);
    await guess('owner').expect(429);
    await guess('owner', SECRET).expect(429);
    await guess('desk', SECRET).expect(200);
    test.clock.pass({ minutes: 16 });
    await guess('owner', SECRET).expect(200);
  });

  it('gets no further by guessing all at once', async () => {
    const answers = await Promise.all(Array.from({ length: 24 }, () => guess('owner')));
    expect(answers.filter(({ status }) => status === 401).length).toBeLessThanOrEqual(8);
  });

  it('counts failures only', async () => {
    for (let index = 0; index < 12; index += 1) await guess('desk', SECRET).expect(200);
  });
});
