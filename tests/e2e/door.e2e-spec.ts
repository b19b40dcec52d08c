import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import request from 'supertest';
import { AuditChain } from '../../apps/server/src/platform/audit-chain.ts';
import { Forgetting } from '../../apps/server/src/platform/forgetting.ts';
import { requestContext } from '../../apps/server/src/platform/request-context.ts';
import { UnitOfWork } from '../../apps/server/src/platform/unit-of-work.ts';
import { type Agent, apiHeaders, formMarks, openTestApp, SECRET, type StaffName, type TestApp } from '../support/test-app.ts';

const NOW = '2026-06-09T08:00:00Z';
const HOST = 'runwarm.example';

let test: TestApp;
let staff: Record<StaffName, string>;
beforeAll(async () => {
  test = await openTestApp();
});
beforeEach(async () => {
  test.clock.set(NOW);
  staff = await test.furnish();
});
afterAll(() => test.close());

const session = (body: Record<string, unknown>) => request(test.http).post('/api/v1/session').send(body);
const cookiesOf = (answer: { headers: Record<string, unknown> }): string[] => (answer.headers['set-cookie'] as string[] | undefined) ?? [];

describe('what can’t be read', () => {
  it.each([
    ['a null sign', 'ow\0ner'],
    ['half a sign', 'owner\ud800'],
    ['nothing but a null sign', '\0'],
    ['a list', ['owner']],
    ['an object', { name: 'owner' }],
  ])('is no fault of ours: %s as a name', async (_what, name) => {
    const { status } = await session({ name, secret: SECRET });
    expect([200, 400, 401]).toContain(status);
  });

  it('does not spoil the first owner’s form', async () => {
    await test.db.workshop.deleteMany();
    const agent = request.agent(test.http);
    const { text } = await agent.get('/first-owner').expect(200);
    const answer = await agent
      .post('/first-owner')
      .type('form')
      .send({ ...formMarks(text), workshopName: ' Fenn\0 Motors', displayName: 'Dag\0ny', name: 'first\0', secret: 'three or four words' })
      .send({ timeZone: 'Europe/Dublin', currency: 'EUR', country: 'IE' });
    expect(answer.headers['location']).toBe('/sign-in');
    expect((await test.db.workshop.findFirstOrThrow()).name).toBe('Fenn Motors');
    await session({ name: 'first', secret: 'three or four words' }).expect(200);
  });

  it('does not spoil the marks of a form', async () => {
    const desk = await test.as('desk');
    const { text } = await desk.get('/counter/customers/new').expect(200);
    const answer = await desk
      .post('/counter/customers/new')
      .type('form')
      .send({ ...formMarks(text), _form: 'cust\0omer', 'na\0me': 'x' });
    expect(answer.status).toBe(303);
  });

  it.each(['', 'x', 'a b c d e f g h i j k l', '%00'.repeat(10)])('gives a new secret for the door’s cookie %j', async (value) => {
    const answer = await request(test.http).get('/sign-in').set('cookie', `door=${value}`).expect(200);
    expect(cookiesOf(answer).join()).toMatch(/door=[\w-]{20,};/);
  });
});

describe('the API', () => {
  it.each([
    ['text/plain', JSON.stringify({ name: 'owner', secret: SECRET })],
    ['application/x-www-form-urlencoded', `name=owner&secret=${encodeURIComponent(SECRET)}`],
    ['multipart/form-data; boundary=x', '--x--\r\n'],
  ])('signs nobody in by %s', async (type, body) => {
    const answer = await request(test.http).post('/api/v1/session').set('content-type', type).send(body);
    expect(answer.status).toBe(415);
    expect(cookiesOf(answer)).toEqual([]);
  });

  it.each(['http://elsewhere.example', 'null', `http://${HOST}.elsewhere.example`])('signs nobody in for %s', async (origin) => {
    await session({ name: 'owner', secret: SECRET }).set({ host: HOST, origin }).expect(403);
    await session({ name: 'owner', secret: SECRET })
      .set({ host: HOST, origin: `http://${HOST}` })
      .expect(200);
  });

  it('takes no change for another site, whatever headers came along', async () => {
    const desk = await test.as('desk');
    const headers = { ...apiHeaders(), host: HOST, origin: 'http://elsewhere.example' };
    await desk.post('/api/v1/customers').set(headers).send({ name: 'x' }).expect(403);
    expect(await test.db.customer.count()).toBe(0);
  });
});

describe('guessing', () => {
  const wrong = (agent: request.Agent | Agent, name: string) => agent.post('/api/v1/session').send({ name, secret: 'wrong' });
  const fromElsewhere = async (count: number, name: string): Promise<void> => {
    const at = new Date(NOW);
    await test.db.signInFailure.createMany({ data: Array.from({ length: count }, (_, index) => ({ name, from: `10.0.0.${index}`, at })) });
  };

  it('gets no further by many tries at once', async () => {
    const answers = await Promise.all(Array.from({ length: 24 }, () => wrong(request(test.http), 'Owner')));
    expect(answers.filter(({ status }) => status === 401)).toHaveLength(8);
    expect(answers.filter(({ status }) => status === 429)).toHaveLength(16);
  });

  it('from elsewhere does not soon shut the owner out, and ends all the same', async () => {
    await fromElsewhere(39, 'owner');
    await session({ name: 'owner', secret: SECRET }).expect(200);
    await fromElsewhere(1, 'owner');
    await session({ name: 'owner', secret: SECRET }).expect(429);
    await session({ name: 'desk', secret: SECRET }).expect(200);
  });

  it('of many names from one address ends too', async () => {
    for (let index = 0; index < 40; index += 1) await wrong(request(test.http), `guess${index}`).expect(401);
    await session({ name: 'owner', secret: SECRET }).expect(429);
  });
});

describe('a form whose session had ended', () => {
  const customer = { name: 'Odile Quill', kind: 'person' };
  const fill = async (agent: Agent): Promise<Record<string, string>> => ({
    ...formMarks((await agent.get('/counter/customers/new').expect(200)).text, 'customer'),
    ...customer,
  });
  const post = (agent: Agent, body: Record<string, string>, headers: Record<string, string> = {}) =>
    agent.post('/counter/customers/new').set(headers).type('form').send(body);
  const enter = async (agent: Agent, name: StaffName) => {
    const { text } = await agent.get('/sign-in').expect(200);
    return agent
      .post('/sign-in')
      .type('form')
      .send({ ...formMarks(text), name, secret: SECRET });
  };

  it.each([{}, { host: HOST, origin: `http://${HOST}` }])('waits for its sender: %j', async (headers) => {
    const desk = await test.as('desk');
    const body = await fill(desk);
    test.clock.pass({ minutes: 13 * 60 });
    const refused = await post(desk, body, headers);
    expect(refused.headers['location']).toContain('/sign-in');
    const cookie = cookiesOf(refused).find((each) => each.startsWith('kept=')) ?? '';
    expect(cookie).toContain('Max-Age=900');
    expect((await enter(desk, 'desk')).headers['location']).toBe('/kept');
    const kept = await desk.get('/kept').expect(200);
    expect(kept.text).toContain('Odile Quill');
    expect(kept.text).not.toContain(staff.desk);
    const sent = await post(desk, { ...formMarks(kept.text, 'customer'), _kept: '1', ...customer });
    expect(sent.headers['location']).toMatch(/^\/counter\/customers\/[0-9a-f-]{36}$/);
    expect(cookiesOf(sent).join()).toMatch(/kept=;/);
    expect((await desk.get('/kept')).status).toBe(303);
    expect(await test.db.keptForm.count()).toBe(0);
  });

  it('is shown to nobody else at that screen', async () => {
    const desk = await test.as('desk');
    const body = await fill(desk);
    test.clock.pass({ minutes: 13 * 60 });
    await post(desk, { ...body, _staff: staff.owner });
    expect((await enter(desk, 'owner')).headers['location']).toBe('/office');
    expect((await desk.get('/kept')).status).toBe(303);
  });

  it('is not kept for another site, for strangers, or once signed out', async () => {
    const desk = await test.as('desk');
    const body = await fill(desk);
    test.clock.pass({ minutes: 13 * 60 });
    for (const origin of ['http://elsewhere.example', 'null']) await post(desk, body, { host: HOST, origin }).expect(303);
    await post(request.agent(test.http), body).expect(303);
    await post(request.agent(test.http).set('cookie', 'runwarm=made-up'), body).expect(303);
    expect(await test.db.keptForm.count()).toBe(0);
  });

  it('is forgotten after a quarter of an hour', async () => {
    const desk = await test.as('desk');
    const body = await fill(desk);
    test.clock.pass({ minutes: 13 * 60 });
    await post(desk, body);
    test.clock.pass({ minutes: 16 });
    expect((await enter(desk, 'desk')).headers['location']).toBe('/counter');
    await test.app.get(Forgetting).forget();
    expect(await test.db.keptForm.count()).toBe(0);
  });

  it('comes back to its page with what was typed when only its token is of an earlier session', async () => {
    const desk = await test.as('desk');
    const body = await fill(desk);
    await desk.post('/api/v1/session').set('x-requested-with', 'fetch').send({ name: 'desk', secret: SECRET }).expect(200);
    await post(desk, body).expect(403);
    await post(desk, body, { host: HOST, origin: 'http://elsewhere.example' }).expect(403);
    const back = await post(desk, body, { host: HOST, origin: `http://${HOST}` });
    expect([back.status, back.headers['location']]).toEqual([303, '/counter/customers/new']);
    const page = await desk.get('/counter/customers/new').expect(200);
    expect(page.text).toContain('value="Odile Quill"');
    expect(page.text).toContain('Look at it and send it again.');
    expect(await test.db.customer.count()).toBe(0);
    await post(desk, { ...formMarks(page.text, 'customer'), ...customer }).expect(303);
    expect(await test.db.customer.count()).toBe(1);
  });
});

describe('the chain of the audit', () => {
  const add = async (name: string): Promise<void> => {
    const desk = await test.as('desk');
    await desk.post('/api/v1/customers').set(apiHeaders()).send({ name }).expect(201);
  };

  it('tells how long it is without walking, and proves personal values that are kept', async () => {
    const chain = test.app.get(AuditChain);
    await add('Fenn Bakery');
    await add('Quay Boats');
    expect(await chain.state()).toEqual({ sealed: 0, unsealed: 2 });
    await chain.seal();
    await add('Lark Row');
    expect(await chain.state()).toEqual({ sealed: 2, unsealed: 1 });
    expect(await chain.verify()).toEqual({ sealed: 2, unsealed: 1, brokenAt: null });
    const { entryId, salt } = await test.db.auditPersonal.findFirstOrThrow({ orderBy: { entryId: 'desc' }, skip: 1 });
    await test.db.auditPersonal.delete({ where: { entryId } });
    expect(await chain.verify()).toMatchObject({ brokenAt: null });
    await test.db.auditPersonal.create({ data: { entryId, salt, values: { after: { name: 'Somebody else' } } } });
    expect(await chain.verify()).toMatchObject({ sealed: 1, brokenAt: entryId });
  });
});

describe('a unit of work', () => {
  const keyed = () => ({ staff: undefined, requestKey: { scope: 'door', key: randomUUID(), route: 'POST /', bodyHash: 'x' } });

  it('is the only one of its request', async () => {
    const unit = test.app.get(UnitOfWork);
    await requestContext.run(keyed(), async () => {
      await expect(unit.run(() => Promise.reject(new Error('half way')))).rejects.toThrow('half way');
      await unit.run(async (tx) => (await tx.customer.create({ data: { name: 'Fenn Bakery' } })).id);
      await expect(unit.run(() => Promise.resolve(null))).rejects.toThrow('One request, one unit of work');
    });
    await requestContext.run(keyed(), () =>
      expect(unit.run(() => unit.run(() => Promise.resolve(null)))).rejects.toThrow('One request, one unit of work'),
    );
  });

  it('keeps nothing to say as nothing', async () => {
    await requestContext.run(keyed(), () => test.app.get(UnitOfWork).run(() => Promise.resolve(null)));
    const [row] = await test.db.$queryRaw<{ kind: string }[]>`select jsonb_typeof(result) as kind from idempotency_key`;
    expect(row?.kind).toBe('null');
  });
});

describe('keys of requests', () => {
  it('are forgotten after a week', async () => {
    const desk = await test.as('desk');
    await desk.post('/api/v1/customers').set(apiHeaders()).send({ name: 'Fenn Bakery' }).expect(201);
    test.clock.pass({ minutes: 7 * 24 * 60 - 1 });
    await test.app.get(Forgetting).forget();
    expect(await test.db.idempotencyKey.count()).toBe(1);
    test.clock.pass({ minutes: 2 });
    await test.app.get(Forgetting).forget();
    expect(await test.db.idempotencyKey.count()).toBe(0);
  });
});

describe('a secret', () => {
  const NEW = 'a newer secret for tests';
  const send = async (agent: Agent, page: string, body: Record<string, string>) => {
    const { text } = await agent.get(page).expect(200);
    return agent
      .post(page)
      .type('form')
      .send({ ...formMarks(text, 'secret'), ...body });
  };

  it('is changed by whoever knows it, at this screen alone', async () => {
    const [tech, elsewhere] = [await test.as('tech'), await test.as('tech')];
    const answer = await send(tech, '/your-secret', { oldSecret: SECRET, newSecret: NEW });
    expect(answer.headers['location']).toBe('/your-secret');
    expect((await tech.get('/your-secret').expect(200)).text).toContain('Your secret is changed.');
    await elsewhere.get('/bays').expect(303);
    await session({ name: 'tech', secret: SECRET }).expect(401);
    await session({ name: 'tech', secret: NEW }).expect(200);
    const entry = await test.db.auditEntry.findFirstOrThrow({ where: { action: 'changed secret' } });
    expect(entry).toMatchObject({ staffId: staff.tech, subjectId: staff.tech, before: null, after: null });
  });

  it('stays when the old one is wrong or the new one short, and no secret is kept on the way', async () => {
    const tech = await test.as('tech');
    await send(tech, '/your-secret', { oldSecret: 'not this one', newSecret: NEW });
    const page = await tech.get('/your-secret').expect(200);
    expect(page.text).toContain('That is not your secret so far.');
    await send(tech, '/your-secret', { oldSecret: SECRET, newSecret: 'short' });
    expect(JSON.stringify(await test.db.session.findMany())).not.toMatch(/not this one|a newer|short"/);
    await session({ name: 'tech', secret: SECRET }).expect(200);
  });

  it('is not guessed at a screen left open', async () => {
    const tech = await test.as('tech');
    for (let index = 0; index < 8; index += 1) await send(tech, '/your-secret', { oldSecret: `guess ${index}`, newSecret: NEW });
    expect((await send(tech, '/your-secret', { oldSecret: SECRET, newSecret: NEW })).status).toBe(429);
  });

  it('is given anew by the owner alone, and ends that person’s sessions', async () => {
    const [owner, tech] = [await test.as('owner'), await test.as('tech')];
    await tech.get(`/office/people/${staff.desk}/secret`).expect(403);
    const answer = await send(owner, `/office/people/${staff.tech}/secret`, { newSecret: NEW });
    expect(answer.headers['location']).toBe('/office/people');
    await tech.get('/bays').expect(303);
    await session({ name: 'tech', secret: NEW }).expect(200);
    const own = await send(owner, `/office/people/${staff.owner}/secret`, { newSecret: NEW });
    expect(own.headers['location']).toBe(`/office/people/${staff.owner}/secret`);
    await session({ name: 'owner', secret: SECRET }).expect(200);
  });
});

describe('owners', () => {
  it('who close each other leave one', async () => {
    const { secretHash } = await test.db.staff.findUniqueOrThrow({ where: { id: staff.owner } });
    const second = await test.db.staff.create({ data: { name: 'second', displayName: 'Bram', role: 'owner', secretHash } });
    const agents = [await test.as('owner'), request.agent(test.http)] as const;
    await agents[1].post('/api/v1/session').send({ name: 'second', secret: SECRET }).expect(200);
    const marks = await Promise.all(
      agents.map(async (agent) => formMarks((await agent.get('/office/people').expect(200)).text, 'account')),
    );
    const close = (agent: Agent, id: string, body: Record<string, string> = {}) =>
      agent.post(`/office/people/${id}/close`).type('form').send(body);
    await Promise.all([close(agents[0], second.id, marks[0]), close(agents[1], staff.owner, marks[1])]);
    expect(await test.db.staff.count({ where: { role: 'owner', isActive: true } })).toBe(1);
  });
});
