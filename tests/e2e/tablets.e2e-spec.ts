import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import request from 'supertest';
import sharp from 'sharp';
import { makeJob } from '../support/factories.ts';
import { givePins, PIN, type StaffIds, tabletCode, TestTablet } from '../support/tablet.ts';
import { formMarks, openTestApp, SECRET, type TestApp } from '../support/test-app.ts';

const NOW = '2026-06-09T08:00:00Z';

let test: TestApp;
let staff: StaffIds;
let jobId: string;
beforeAll(async () => {
  test = await openTestApp();
});
beforeEach(async () => {
  test.clock.set(NOW);
  staff = await test.furnish();
  await givePins(test);
  ({ jobId } = await makeJob(test.db, { deskId: staff.desk }));
});
afterAll(() => test.close());

describe('a tablet', () => {
  it('is enrolled by a code, once, within a quarter of an hour', async () => {
    const code = await tabletCode(test, 'Bay 1');
    const agent = request.agent(test.http);
    const enrol = async (typed: string): Promise<number> => {
      const { text } = await agent.get('/tablet');
      return (
        await agent
          .post('/tablet/enrol')
          .type('form')
          .send({ ...formMarks(text, 'enrol'), code: typed })
      ).status;
    };
    expect(await enrol('AAAA AAAA')).toBe(422);
    test.clock.set('2026-06-09T08:16:00Z');
    expect(await enrol(code)).toBe(422);
    test.clock.set('2026-06-09T08:14:00Z');
    expect(await enrol(code.toLowerCase().replace(' ', '-'))).toBe(303);
    const other = request.agent(test.http);
    const { text } = await other.get('/tablet');
    expect(
      (
        await other
          .post('/tablet/enrol')
          .type('form')
          .send({ ...formMarks(text, 'enrol'), code })
      ).status,
    ).toBe(422);
    expect(await test.db.tablet.count({ where: { tokenHash: { not: null } } })).toBe(1);
  });

  it('asks who holds it instead of a name and a secret, and can be signed in on without script', async () => {
    const { agent } = await TestTablet.enrol(test);
    expect((await agent.get('/sign-in?back=/bays')).headers['location']).toBe('/tablet?back=%2Fbays');
    const page = await agent.get('/tablet?back=/bays').expect(200);
    expect(page.text).toContain('Jory');
    const sent = { ...formMarks(page.text, 'pin'), staffId: staff.tech, back: '/bays' };
    expect(
      (
        await agent
          .post('/tablet/sign-in')
          .type('form')
          .send({ ...sent, pin: '0000' })
      ).status,
    ).toBe(401);
    const right = await agent
      .post('/tablet/sign-in')
      .type('form')
      .send({ ...sent, pin: PIN });
    expect([right.status, right.headers['location']]).toEqual([303, '/bays']);
    await agent.get('/bays').expect(200);
  });

  it('is the only place where a PIN opens anything, and guessing there is stopped', async () => {
    const stranger = request(test.http);
    expect(
      (await stranger.post('/api/v1/tablet/sign-in').set('x-requested-with', 'fetch').send({ staffId: staff.tech, pin: PIN })).status,
    ).toBe(401);
    const tablet = await TestTablet.enrol(test);
    const tries: number[] = [];
    for (let wrong = 0; wrong < 9; wrong += 1) tries.push(await tablet.pin(staff.tech, '9999'));
    expect(tries.slice(0, 8).every((status) => status === 401)).toBe(true);
    expect(tries[8]).toBe(429);
    expect(await tablet.pin(staff.tech)).toBe(429);
    expect(await tablet.pin(staff.owner)).toBe(200);
    test.clock.set('2026-06-09T08:16:00Z');
    expect(await tablet.pin(staff.tech)).toBe(200);
  });

  it('sends by its own token with nobody signed in, long after the last sight, until it is revoked', async () => {
    const tablet = await TestTablet.enrol(test);
    test.clock.set('2026-12-24T08:00:00Z');
    expect(await tablet.send(tablet.entry(jobId, staff.tech, { kind: 'tick', step: 'keys-tagged' }))).toMatchObject([{ state: 'kept' }]);
    expect((await test.db.session.count({ where: { staffId: staff.tech } })) === 0).toBe(true);
    await tablet.agent.get(`/bays/jobs/${jobId}/card`).expect(303);
    const desk = await test.as('desk');
    const { text } = await desk.get('/bays/tablets').expect(200);
    await desk.post(`/bays/tablets/${tablet.id}/revoke`).type('form').send(formMarks(text, 'revoke')).expect(303);
    const answer = await tablet.agent.post('/api/v1/tablet/actions').set('x-requested-with', 'fetch').send({ actions: [] });
    expect(answer.status).toBe(401);
  });

  it('takes nothing that another site sends through it', async () => {
    const { agent } = await TestTablet.enrol(test);
    expect((await agent.post('/api/v1/tablet/actions').send({ actions: [] })).status).toBe(403);
    expect(
      (
        await agent
          .post('/api/v1/tablet/actions')
          .set({ 'x-requested-with': 'fetch', origin: 'https://elsewhere.example' })
          .send({ actions: [] })
      ).status,
    ).toBe(403);
    const desk = await test.as('desk');
    expect((await desk.get('/api/v1/tablet/day')).status).toBe(403);
    expect((await request(test.http).get('/api/v1/tablet/day')).status).toBe(401);
  });
});

describe('a PIN', () => {
  it('is set by whoever knows the secret, and is none that everybody tries first', async () => {
    const tech = await test.as('tech');
    const set = async (pin: string, oldSecret = SECRET): Promise<string> => {
      const { text } = await tech.get('/your-secret/pin').expect(200);
      await tech
        .post('/your-secret/pin')
        .type('form')
        .send({ ...formMarks(text, 'secret'), _page: '/your-secret/pin', oldSecret, pin })
        .expect(303);
      return (await tech.get('/your-secret/pin').expect(200)).text;
    };
    for (const easy of ['1111', '1234', '4321', '123', '123456789', 'abcd', '0123', '98765'])
      expect(await set(easy)).toContain('not in a row');
    expect(await set('2580', 'another secret')).toContain('not your secret');
    expect(await set('2580')).toContain('Your PIN is set.');
    const tablet = await TestTablet.enrol(test);
    expect([await tablet.pin(staff.tech), await tablet.pin(staff.tech, '2580')]).toEqual([401, 200]);
  });
});

describe('whose an entry is', () => {
  it('is proven by a sign-in on that tablet and by nothing else', async () => {
    const tablet = await TestTablet.enrol(test);
    const other = await TestTablet.enrol(test, 'Bay 2');
    await tablet.pin(staff.tech);
    await other.pin(staff.owner);
    const entries = [
      tablet.entry(jobId, staff.tech, { kind: 'tick', step: 'keys-tagged' }),
      tablet.entry(jobId, staff.owner, { kind: 'tick', step: 'damage-noted' }),
      { ...tablet.entry(jobId, staff.owner, { kind: 'note', step: 'card', value: { words: 'a' } }), signIn: other.signIn },
      { ...tablet.entry(jobId, staff.tech, { kind: 'note', step: 'card', value: { words: 'b' } }), byProof: 'picked-offline' },
      { ...tablet.entry(jobId, staff.tech, { kind: 'note', step: 'card', value: { words: 'c' } }), signIn: undefined },
    ];
    expect((await tablet.send(...entries)).map(({ state }) => state)).toEqual(entries.map(() => 'kept'));
    const rows = await test.db.jobAction.findMany({ orderBy: { seq: 'asc' } });
    expect(rows.map(({ byProof }) => byProof)).toEqual(['session', 'picked-offline', 'picked-offline', 'picked-offline', 'picked-offline']);
    expect(rows.every(({ deviceId }) => deviceId === tablet.id)).toBe(true);
    const confirm = tablet.entry(jobId, staff.tech, { kind: 'confirm-name', step: 'card', value: { of: rows[3]?.id } });
    expect(await tablet.send(confirm)).toMatchObject([{ state: 'kept' }]);
  });

  it('lets nobody but a proven owner let a debt go', async () => {
    const tablet = await TestTablet.enrol(test);
    const said = tablet.entry(jobId, staff.owner, { kind: 'let-go', step: 'cold-level', value: { reason: 'x' } });
    expect(await tablet.send(said)).toMatchObject([{ state: 'stray' }]);
  });
});

describe('what a tablet sends', () => {
  it('is kept once in its order, however it is repeated, and nothing holds up what follows', async () => {
    const tablet = await TestTablet.enrol(test);
    await tablet.pin(staff.tech);
    const good = [
      tablet.entry(jobId, staff.tech, { kind: 'tick', step: 'keys-tagged' }),
      tablet.entry(jobId, staff.tech, { kind: 'record', step: 'odometer', value: { value: 86_412 } }),
    ];
    const nowhere = tablet.entry(randomUUID(), staff.tech, { kind: 'tick', step: 'tray' });
    const nobody = tablet.entry(jobId, randomUUID(), { kind: 'tick', step: 'damage-noted' });
    const early = tablet.entry(jobId, staff.tech, { kind: 'tick', step: 'cap-off' });
    const last = tablet.entry(jobId, staff.tech, { kind: 'tick', step: 'damage-noted' });
    const all = [...good, nowhere, nobody, early, last];
    const first = await tablet.send(...all);
    expect(first.map(({ state }) => state)).toEqual(['kept', 'kept', 'stray', 'stray', 'difference', 'kept']);
    expect(await tablet.send(...all)).toEqual(first);
    await Promise.all(Array.from({ length: 4 }, () => tablet.send(...all)));
    const rows = await test.db.jobAction.findMany({ orderBy: { seq: 'asc' } });
    expect(rows.map(({ id }) => id)).toEqual([...good, early, last].map(({ id }) => id));
    const strays = await test.db.tabletStray.findMany({ orderBy: { deviceSeq: 'asc' } });
    expect(strays.map(({ id, deviceSeq }) => [id, deviceSeq])).toEqual([nowhere, nobody].map(({ id, deviceSeq }) => [id, deviceSeq]));
    const desk = await test.as('desk');
    const { text } = await desk.get('/bays/tablets').expect(200);
    expect(text).toContain('What no card could take');
    await desk
      .post(`/bays/tablets/strays/${String(nowhere['id'])}`)
      .type('form')
      .send(formMarks(text, 'stray'))
      .expect(303);
    expect(await test.db.tabletStray.count({ where: { lookedAtAt: null } })).toBe(1);
    await expect(test.db.tabletStray.deleteMany()).rejects.toThrow();
  });

  it('is missed where its numbers have a gap, until it arrives', async () => {
    const tablet = await TestTablet.enrol(test);
    const [one, two, three] = [1, 2, 3].map(() => tablet.entry(jobId, staff.tech, { kind: 'note', step: 'card', value: { words: 'x' } }));
    await tablet.send(one ?? {}, three ?? {});
    expect(await tablet.day()).toMatchObject({ lastSeq: 3, missing: [{ from: 2, to: 2 }] });
    const desk = await test.as('desk');
    expect((await desk.get('/bays/tablets')).text).toContain('<b class="late">2</b>');
    await tablet.send(two ?? {});
    expect(await tablet.day()).toMatchObject({ missing: [] });
  });

  it('is refused as a whole only where it is no list of actions', async () => {
    const tablet = await TestTablet.enrol(test);
    for (const body of [
      {},
      { actions: 'x' },
      { actions: [{ id: 'no' }] },
      { actions: Array.from({ length: 201 }, () => ({ id: randomUUID() })) },
    ]) {
      const answer = await tablet.agent.post('/api/v1/tablet/actions').set('x-requested-with', 'fetch').send(body);
      expect(answer.status).toBe(400);
    }
    const odd = { id: randomUUID(), card: 'x\0y', value: 'a\0b', deviceSeq: -1 };
    expect(await tablet.send(odd)).toMatchObject([{ state: 'stray' }]);
  });

  it('may be a photo: once, whose it is said or proven to be', async () => {
    const tablet = await TestTablet.enrol(test);
    await tablet.pin(staff.tech);
    const bytes = await sharp({ create: { width: 60, height: 40, channels: 3, background: '#b51' } })
      .jpeg()
      .toBuffer();
    const id = randomUUID();
    const put = (query: string) =>
      tablet.agent
        .put(`/api/v1/tablet/jobs/${jobId}/photos/${id}?${query}`)
        .set('x-requested-with', 'fetch')
        .type('image/jpeg')
        .send(bytes);
    await put(`by=${staff.tech}&signIn=${tablet.signIn ?? ''}&step=keys-tagged&takenAt=2026-06-09T07:00:00Z`).expect(200);
    await put(`by=${staff.tech}&signIn=${tablet.signIn ?? ''}&step=keys-tagged&takenAt=2026-06-09T07:00:00Z`).expect(200);
    expect(await test.db.photo.findMany({ select: { id: true, byProof: true, deviceId: true } })).toEqual([
      { id, byProof: 'session', deviceId: tablet.id },
    ]);
    await put(`by=${randomUUID()}`).expect(400);
  });

  it('finds the day’s cards with everything they show', async () => {
    const tablet = await TestTablet.enrol(test);
    await tablet.send(tablet.entry(jobId, staff.tech, { kind: 'tick', step: 'keys-tagged' }));
    await tablet.pin(staff.tech);
    const day = await tablet.day();
    expect(day.cards.map(({ row, actions }) => [row.id, actions.length])).toEqual([[jobId, 1]]);
    expect(day.who).toMatchObject({ staffId: staff.tech, role: 'technician', signIn: tablet.signIn });
    expect(JSON.stringify(day)).not.toContain('Hash');
  });
});
