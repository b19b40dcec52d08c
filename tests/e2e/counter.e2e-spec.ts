import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import request from 'supertest';
import { type Agent, apiHeaders, formMarks, openTestApp, type TestApp } from '../support/test-app.ts';

let test: TestApp;
let desk: Agent;
beforeAll(async () => {
  test = await openTestApp();
});
beforeEach(async () => {
  await test.furnish();
  desk = await test.as('desk');
});
afterAll(() => test.close());

async function send(agent: Agent, { page, form, body }: { page: string; form?: string; body: Record<string, string> }) {
  const { text } = await agent.get(page).expect(200);
  return agent
    .post(page)
    .type('form')
    .send({ ...formMarks(text, form), ...body });
}

const customer = {
  name: 'Odile Quill',
  kind: 'person',
  phone: '0555 0142',
  email: '',
  address: '19 Lark Row',
  postcode: '',
  city: 'Saltmere',
  country: '',
  vatId: '',
  note: '',
};

describe('a customer', () => {
  it('is added by the form and found by any part of the name', async () => {
    const answer = await send(desk, { page: '/counter/customers/new', body: customer });
    expect(answer.status).toBe(303);
    const page = await desk.get(answer.headers['location'] as string).expect(200);
    expect(page.text).toContain('Odile Quill is on record.');
    const found = await desk.get('/counter?q=uill').expect(200);
    expect(found.text).toContain('Odile Quill');
  });

  it('comes back with the message beside the field and what was typed', async () => {
    const answer = await send(desk, { page: '/counter/customers/new', form: 'customer', body: { ...customer, email: 'nowhere' } });
    expect(answer.headers['location']).toBe('/counter/customers/new');
    const page = await desk.get('/counter/customers/new').expect(200);
    expect(page.text).toContain('This is no e-mail address');
    expect(page.text).toContain('<h2>Nothing was saved yet. Change this:</h2>');
    expect(page.text).toContain('value="Odile Quill"');
    expect(await test.db.customer.count()).toBe(0);
  });

  it('is added once by a form sent twice', async () => {
    const { text } = await desk.get('/counter/customers/new').expect(200);
    const body = { ...formMarks(text), ...customer };
    const [first, second] = await Promise.all([
      desk.post('/counter/customers/new').type('form').send(body),
      desk.post('/counter/customers/new').type('form').send(body),
    ]);
    expect(first.status).toBe(303);
    expect(second.headers['location']).toBe(first.headers['location']);
    expect(await test.db.customer.count()).toBe(1);
  });

  it.each([
    ['markup', '<script>alert(1)</script>'],
    ['another script', 'Σωκράτης Παπαδόπουλος'],
    ['signs', "Robert'); DROP TABLE customer;--"],
    ['emoji', '🚗 Garage'],
  ])('takes %s as a name and shows it as text', async (_what, name) => {
    const answer = await send(desk, { page: '/counter/customers/new', body: { ...customer, name } });
    const page = await desk.get(answer.headers['location'] as string).expect(200);
    expect(page.text).not.toContain('<script>alert');
    expect((await test.db.customer.findFirstOrThrow()).name).toBe(name);
  });

  it.each([
    ['empty', { name: '' }],
    ['too long', { name: 'x'.repeat(121) }],
    ['a null sign', { name: '\0' }],
    ['of a wrong kind', { kind: 'robot' }],
    ['with an unknown field', { colour: 'green' }],
  ])('is refused when %s, with nothing written', async (_what, change) => {
    const answer = await send(desk, { page: '/counter/customers/new', body: { ...customer, ...change } });
    expect(answer.headers['location']).toBe('/counter/customers/new');
    expect(await test.db.customer.count()).toBe(0);
  });
});

describe('a change of what is on record', () => {
  it('needs the version that the form was opened with', async () => {
    const added = await send(desk, { page: '/counter/customers/new', body: customer });
    const customerPage = added.headers['location'] as string;
    const vehicle = { registration: 'TQ 40 KES', make: 'Tamber', model: 'Orla 1.4' };
    const vehiclePage = (await send(desk, { page: `${customerPage}/vehicles/new`, body: vehicle })).headers['location'] as string;
    for (const [page, form, body] of [
      [`${customerPage}/edit`, 'customer', { ...customer, name: 'Somebody else' }],
      [`${vehiclePage}/edit`, 'vehicle', { ...vehicle, make: 'Other' }],
    ] as const) {
      const answer = await send(desk, { page, form, body });
      expect([answer.status, answer.headers['location']]).toEqual([303, page]);
      expect((await desk.get(page).expect(200)).text).toContain('does not say which version it changes');
    }
    expect((await test.db.customer.findFirstOrThrow()).name).toBe('Odile Quill');
    expect((await test.db.vehicle.findFirstOrThrow()).make).toBe('Tamber');
  });

  it('keeps no half signs', async () => {
    await desk.post('/api/v1/customers').set(apiHeaders()).send('{"name":"\\ud800abc","note":"a\\u0000b"}').type('json').expect(201);
    expect(await test.db.customer.findFirstOrThrow()).toMatchObject({ name: '\ufffdabc', note: 'ab' });
  });
});

describe('the API of customers', () => {
  it('answers a repeat of the same key with the same customer', async () => {
    const headers = apiHeaders();
    const first = await desk.post('/api/v1/customers').set(headers).send({ name: 'Fenn Bakery' }).expect(201);
    const second = await desk.post('/api/v1/customers').set(headers).send({ name: 'Fenn Bakery' }).expect(201);
    expect(second.body).toEqual(first.body);
    expect(await test.db.customer.count()).toBe(1);
  });

  it('refuses the same key with another body', async () => {
    const headers = apiHeaders();
    await desk.post('/api/v1/customers').set(headers).send({ name: 'Fenn Bakery' }).expect(201);
    await desk
      .post('/api/v1/customers')
      .set(headers)
      .send({ name: 'Quay Boats' })
      .expect(422)
      .expect('content-type', /problem\+json/);
  });

  it('does not use a key up on a refusal', async () => {
    const headers = apiHeaders();
    const refused = await desk.post('/api/v1/customers').set(headers).send({ name: '' }).expect(400);
    expect(refused.body).toMatchObject({ status: 400, errors: [{ field: 'name', message: 'Type the name, 120 letters at most.' }] });
    await desk.post('/api/v1/customers').set(headers).send({ name: 'Fenn Bakery' }).expect(201);
  });

  it('asks for a key and for a call from our own pages', async () => {
    await desk.post('/api/v1/customers').set('x-requested-with', 'fetch').send({ name: 'x' }).expect(400);
    await desk.post('/api/v1/customers').set('idempotency-key', randomUUID()).send({ name: 'x' }).expect(403);
  });

  it('refuses a change of a version that is no longer the current one', async () => {
    const added = await desk.post('/api/v1/customers').set(apiHeaders()).send({ name: 'Fenn Bakery' }).expect(201);
    const { id } = added.body as { id: string };
    const etag = added.headers['etag'] as string;
    await desk
      .put(`/api/v1/customers/${id}`)
      .set({ ...apiHeaders(), 'if-match': etag })
      .send({ name: 'Fenn & Daughter' })
      .expect(200);
    await desk
      .put(`/api/v1/customers/${id}`)
      .set({ ...apiHeaders(), 'if-match': etag })
      .send({ name: 'Fenn & Son' })
      .expect(409);
    await desk.put(`/api/v1/customers/${id}`).set(apiHeaders()).send({ name: 'Fenn & Son' }).expect(400);
    expect((await test.db.customer.findFirstOrThrow()).name).toBe('Fenn & Daughter');
  });

  it('says nothing is there for addresses that no record has', async () => {
    await desk.get(`/api/v1/customers/${randomUUID()}`).expect(404);
    await desk.get('/api/v1/customers/robert').expect(404);
  });
});

describe('a call, from complaint to key tag', () => {
  it('leads through yes, booking and arrival', async () => {
    const added = await send(desk, { page: '/counter/customers/new', body: customer });
    const customerPage = added.headers['location'] as string;
    const vehicle = {
      registration: 'tq 40 kes',
      vin: '',
      make: 'Tamber',
      model: 'Orla 1.4',
      engineCode: 'tk14',
      built: '2017-03',
      thermostatKind: 'wax',
      note: '',
    };
    const withVehicle = await send(desk, { page: `${customerPage}/vehicles/new`, body: vehicle });
    const vehiclePage = withVehicle.headers['location'] as string;
    const taken = await send(desk, {
      page: `${vehiclePage}/jobs/new`,
      body: { complaint: 'Heater lukewarm', complaintWhen: 'mornings', template: 'thermostat', comebackOf: '' },
    });
    const jobPage = taken.headers['location'] as string;
    expect(jobPage).toMatch(/^\/counter\/jobs\//);

    const yes = {
      saidBy: 'Odile Quill',
      how: 'phone',
      saidDay: '2026-06-09',
      saidTime: '08:50',
      name1: 'Thermostat with its seal',
      gross1: '240,00',
      yes1: 'on',
      name2: '',
      gross2: '',
      name3: '',
      gross3: '',
      ceiling: '260',
      words: '',
    };
    const low = await send(desk, { page: `${jobPage}/yes`, form: 'yes', body: { ...yes, ceiling: '200' } });
    expect(low.headers['location']).toBe(`${jobPage}/yes`);
    expect((await desk.get(`${jobPage}/yes`)).text).toContain('come to 240.00 with tax');
    const said = await send(desk, { page: `${jobPage}/yes`, form: 'yes', body: yes });
    expect(said.headers['location']).toBe(jobPage);

    const place = await test.db.place.create({ data: { name: 'Bay 1', kind: 'bay', position: 1 } });
    const { text } = await desk.get(jobPage).expect(200);
    const slot = { phase: 'opening', placeId: place.id, staffId: '', day: '2026-06-10', from: '09:45', minutes: '90' };
    const booked = await desk
      .post(`${jobPage}/booking`)
      .type('form')
      .send({ ...formMarks(text, 'booking'), ...slot });
    expect(booked.status).toBe(303);
    expect((await desk.get(jobPage)).text).toContain('10 Jun, 09:45 to 11:15');
    const again = await desk
      .post(`${jobPage}/booking`)
      .type('form')
      .send({ ...formMarks(text, 'booking'), _key: randomUUID(), ...slot, from: '10:00' });
    expect(again.headers['location']).toBe(jobPage);
    expect((await desk.get(jobPage)).text).toContain('Bay 1 is taken in that time');

    const arrived = await desk
      .post(`${jobPage}/arrival`)
      .type('form')
      .send({ ...formMarks(text, 'arrival'), keyTag: '14', odometerKm: '86412', leftInCar: '' });
    expect(arrived.status).toBe(303);
    const job = await test.db.job.findFirstOrThrow({ include: { stageChanges: { orderBy: { id: 'asc' } } } });
    expect(job.stage).toBe('standing');
    expect(job.keyTag).toBe(14);
    expect(job.stageChanges.map(({ from, to }) => `${from} > ${to}`)).toEqual(['spoken-of > expected', 'expected > standing']);
    expect((await desk.get('/bays').expect(200)).text).toContain('Tamber Orla 1.4');
  });
});

describe('the door', () => {
  it('sends strangers to the sign-in and brings them back', async () => {
    const answer = await request(test.http).get('/counter').expect(303);
    expect(answer.headers['location']).toBe('/sign-in?back=%2Fcounter');
  });

  it('counts failures only, and stops guessing', async () => {
    const guess = () => request(test.http).post('/api/v1/session').send({ name: 'owner', secret: 'wrong' });
    for (let i = 0; i < 8; i += 1) await guess().expect(401);
    await guess().expect(429);
    test.clock.pass({ minutes: 16 });
    await test.as('owner');
  });

  it('lets no technician write to the counter', async () => {
    const tech = await test.as('tech');
    await tech.get('/counter').expect(403);
    await tech.post('/api/v1/customers').set(apiHeaders()).send({ name: 'x' }).expect(403);
  });
});
