import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import request from 'supertest';
import sharp from 'sharp';
import { newThermostatJob } from '../support/job-card.ts';
import { type Agent, formMarks, openTestApp, type StaffName, type TestApp } from '../support/test-app.ts';

let test: TestApp;
let staff: Record<StaffName, string>;
let tech: Agent;
let jobId: string;
let picture: Buffer;
beforeAll(async () => {
  test = await openTestApp();
  picture = await sharp({ create: { width: 800, height: 600, channels: 3, background: '#b51' } })
    .jpeg()
    .toBuffer();
});
beforeEach(async () => {
  test.clock.set('2026-06-09T08:00:00Z');
  staff = await test.furnish();
  tech = await test.as('tech');
  jobId = await newThermostatJob(test, staff.desk);
});
afterAll(() => test.close());

const address = (id: string, job = jobId): string => `/api/v1/job-cards/${job}/photos/${id}`;

const send = (id: string, bytes: Buffer, { type = 'image/jpeg', job = jobId, agent = tech } = {}) =>
  agent.put(address(id, job)).set('x-requested-with', 'fetch').set('x-taken-at', '2026-06-09T07:58:00Z').type(type).send(bytes);

const typeOf = (answer: { body: unknown }): string => (answer.body as { type: string }).type;

describe('a photo', () => {
  it('is kept once, however often it is sent, and shown as a picture only', async () => {
    const id = randomUUID();
    await send(id, picture).expect(200, { id });
    await send(id, picture).expect(200, { id });
    await Promise.all(Array.from({ length: 4 }, () => send(id, picture).expect(200)));
    expect(await test.db.photo.count()).toBe(1);
    expect(await test.db.auditEntry.count({ where: { subject: 'photo', subjectId: id } })).toBe(1);
    const row = await test.db.photo.findUniqueOrThrow({ where: { id } });
    expect([row.jobId, row.byId, row.takenAt?.toISOString()]).toEqual([jobId, staff.tech, '2026-06-09T07:58:00.000Z']);
    for (const size of ['', '/small']) {
      const shown = await tech.get(`/photos/${id}${size}`).expect(200);
      expect(shown.headers).toMatchObject({
        'content-type': 'image/jpeg',
        'x-content-type-options': 'nosniff',
        'content-security-policy': "default-src 'none'; sandbox",
        'content-disposition': `inline; filename="photo-${id}.jpg"`,
        'cache-control': 'no-store',
      });
      expect((await sharp(shown.body as Buffer).metadata()).format).toBe('jpeg');
    }
    const list = await tech.get(`/api/v1/job-cards/${jobId}/photos`).expect(200);
    expect(list.body).toMatchObject([{ id, widthPx: 800, heightPx: 600, by: staff.tech, takenAt: '2026-06-09T07:58:00.000Z' }]);
  });

  it('is not another one under the same id', async () => {
    const id = randomUUID();
    await send(id, picture).expect(200);
    const other = await sharp({ create: { width: 80, height: 60, channels: 3, background: '#000' } })
      .png()
      .toBuffer();
    expect(typeOf(await send(id, other, { type: 'image/png' }).expect(409))).toBe('/problems/photo-id-taken');
    const second = await newThermostatJob(test, staff.desk);
    expect(typeOf(await send(id, picture, { job: second }).expect(409))).toBe('/problems/photo-id-taken');
  });

  it('is never changed', async () => {
    const id = randomUUID();
    await send(id, picture).expect(200);
    await expect(test.db.photo.update({ where: { id }, data: { words: 'another' } })).rejects.toThrow();
    await expect(test.db.photo.delete({ where: { id } })).rejects.toThrow();
  });

  it('is seen and sent by nobody who is not signed in', async () => {
    const id = randomUUID();
    await send(id, picture).expect(200);
    const stranger = request(test.http);
    expect((await stranger.get(`/photos/${id}`)).status).toBe(303);
    expect((await stranger.get(`/api/v1/job-cards/${jobId}/photos`)).status).toBe(401);
    expect((await stranger.put(address(randomUUID())).set('x-requested-with', 'fetch').type('image/jpeg').send(picture)).status).toBe(401);
    expect((await tech.put(address(randomUUID())).type('image/jpeg').send(picture)).status).toBe(403);
    expect(await test.db.photo.count()).toBe(1);
  });
});

describe('the card’s form', () => {
  const card = (): string => `/bays/jobs/${jobId}/card`;

  async function sendForm(fields: Record<string, string>, bytes?: Buffer) {
    const page = `${card()}?step=keys-tagged`;
    const marks = formMarks((await tech.get(page).expect(200)).text);
    const post = tech.post(`${card()}/actions`);
    for (const [field, value] of Object.entries({ ...marks, _page: page, step: 'keys-tagged', ...fields })) post.field(field, value);
    return bytes ? post.attach('photo', bytes, 'photo.jpg') : post;
  }

  it('keeps a photo at its step, and one with a finding, without script', async () => {
    expect((await sendForm({ _form: 'photo', act: 'photo', photoWords: 'Scratch, left door' }, picture)).status).toBe(303);
    expect((await sendForm({ _form: 'finding', act: 'finding', found: 'Hose swollen', severity: 'soon' }, picture)).status).toBe(303);
    const actions = await test.db.jobAction.findMany({ orderBy: { seq: 'asc' } });
    const photos = await test.db.photo.findMany({ orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }] });
    expect(actions.map(({ kind, step }) => [kind, step])).toEqual([
      ['photo', 'keys-tagged'],
      ['finding', 'keys-tagged'],
    ]);
    expect(actions.map(({ value }) => (value as { photo: string }).photo).sort()).toEqual(photos.map(({ id }) => id).sort());
    const { text } = await tech.get(`${card()}?step=keys-tagged`).expect(200);
    expect(text).toContain('Scratch, left door');
    for (const { id } of photos) expect(text).toContain(`/photos/${id}/small`);
  });

  it('brings a form back whose photo is none, or names another photo by hand', async () => {
    const refused = await sendForm({ _form: 'photo', act: 'photo', photoWords: 'Scratch' }, Buffer.from('<html></html>'));
    expect(refused.status).toBe(303);
    const { text } = await tech.get(String(refused.headers['location'])).expect(200);
    expect(text).toContain('This is a web page or a drawing in text, not a picture');
    expect(text).toContain('value="Scratch"');
    expect((await sendForm({ _form: 'photo', act: 'photo', photo: randomUUID() })).status).toBe(303);
    expect([await test.db.photo.count(), await test.db.jobAction.count()]).toEqual([0, 0]);
  });
});

describe('what is no photo', () => {
  it('is refused with what to do: a page called .jpg, a broken one, 30 MB, no job, other content', async () => {
    const page = await send(randomUUID(), Buffer.from('<html><script>alert(1)</script></html>')).expect(400);
    expect(page.body).toMatchObject({ type: '/problems/no-picture', errors: [{ field: 'photo' }] });
    expect(typeOf(await send(randomUUID(), picture.subarray(0, 900)).expect(400))).toBe('/problems/broken-picture');
    const large = await send(randomUUID(), Buffer.concat([picture, Buffer.alloc(30 * 1024 * 1024)]));
    expect([large.status, typeOf(large)]).toEqual([413, '/problems/picture-too-large']);
    expect(typeOf(await send(randomUUID(), picture, { job: randomUUID() }).expect(404))).toBe('/problems/no-such-job');
    expect((await tech.put(address(randomUUID())).set('x-requested-with', 'fetch').send({})).status).toBe(400);
    expect((await send(randomUUID(), picture, { type: 'application/octet-stream' })).status).toBe(415);
    await tech.get(`/photos/${randomUUID()}`).expect(404);
    expect(await test.db.photo.count()).toBe(0);
  });

  it('is taken by no other call', async () => {
    const answer = await tech.post(`/api/v1/job-cards/${jobId}/actions`).set('x-requested-with', 'fetch').type('image/jpeg').send(picture);
    expect(answer.status).toBe(415);
  });
});
