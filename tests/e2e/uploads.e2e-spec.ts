import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import request from 'supertest';
import { CounterController } from '../../apps/server/src/features/customers/counter.controller.ts';
import { TakesFiles } from '../../apps/server/src/platform/uploads/takes-files.decorator.ts';
import { type Agent, formMarks, openTestApp, type TestApp } from '../support/test-app.ts';

const FORM = '/counter/customers/new';
const MOST_BYTES = 300_000;

let test: TestApp;
let desk: Agent;
beforeAll(async () => {
  // A form of ours that takes no files otherwise: what holds for its marks holds for those of every form.
  const handler = Object.getOwnPropertyDescriptor(CounterController.prototype, 'add') as PropertyDescriptor;
  TakesFiles({ mostFiles: 1, mostBytes: MOST_BYTES })(CounterController.prototype, 'add', handler);
  test = await openTestApp();
});
beforeEach(async () => {
  await test.furnish();
  desk = await test.as('desk');
});
afterAll(() => test.close());

type Fields = Record<string, string>;

const marks = async (): Promise<Fields> => formMarks((await desk.get(FORM).expect(200)).text, 'customer');

function send(fields: Fields, file: Buffer | undefined = Buffer.from('a,b\n1,2\n'), agent: Agent = desk) {
  const call = Object.entries(fields).reduce((form, [name, value]) => form.field(name, value), agent.post(FORM));
  return file ? call.attach('file', file, 'log.csv') : call;
}

const names = async (): Promise<string[]> => (await test.db.customer.findMany()).map(({ name }) => name);

describe('a form with a file', () => {
  it('is taken like any other, its fields as they were typed', async () => {
    const answer = await send({ ...(await marks()), name: 'Ünal Özdemir' });
    expect(answer.status).toBe(303);
    expect(answer.headers['location']).toMatch(/^\/counter\/customers\/[0-9a-f-]{36}$/);
    expect(await names()).toEqual(['Ünal Özdemir']);
  });

  it('is taken once, however often it is sent, and is another one with another file', async () => {
    const form = { ...(await marks()), name: 'Once' };
    const first = await send(form);
    const again = await send(form);
    expect(again.headers['location']).toBe(first.headers['location']);
    const other = await send(form, Buffer.from('another'));
    expect(other.headers['location']).toBe(FORM);
    expect(await names()).toEqual(['Once']);
    expect((await desk.get(FORM)).text).toContain('already saved with other values');
  });

  it.each(['_csrf', '_key'])('proves where it comes from: without %s it changes nothing', async (mark) => {
    const answer = await send({ ...(await marks()), name: 'Nobody', [mark]: '' });
    expect([303, 400, 403]).toContain(answer.status);
    expect(await names()).toEqual([]);
  });

  it('comes back with what was typed when an answer is refused', async () => {
    const answer = await send({ ...(await marks()), name: 'Kept', phone: 'none' });
    expect([answer.status, answer.headers['location']]).toEqual([303, FORM]);
    const { text } = await desk.get(FORM);
    expect(text).toContain('value="Kept"');
    expect(text).toContain('Type the phone number in digits');
  });

  it('comes back with what was typed when its file is too large, wherever in the form it stands', async () => {
    const typed = await marks();
    const large = Buffer.alloc(MOST_BYTES + 1, 'x');
    const call = desk.post(FORM).attach('file', large, 'long log.csv');
    const answer = await Object.entries({ ...typed, name: 'Typed after it' }).reduce(
      (form, [name, value]) => form.field(name, value),
      call,
    );
    expect([answer.status, answer.headers['location']]).toEqual([303, FORM]);
    const { text } = await desk.get(FORM);
    expect(text).toContain('“long log.csv” is larger than 0.2 MB');
    expect(text).toContain('value="Typed after it"');
    expect(await names()).toEqual([]);
  });

  it('takes no more files than it says', async () => {
    const call = send({ ...(await marks()), name: 'Two' }).attach('file', Buffer.from('second'), 'second.csv');
    expect((await call).headers['location']).toBe(FORM);
    expect(await names()).toEqual([]);
  });

  it.each([
    ['without an end', 'multipart/form-data; boundary=x', '--x\r\nContent-Disposition: form-data; name="name"\r\n\r\nHalf'],
    ['without a boundary', 'multipart/form-data', 'name=x'],
    ['that is empty', 'multipart/form-data; boundary=x', ''],
    [
      'with a prototype for a field',
      'multipart/form-data; boundary=x',
      '--x\r\nContent-Disposition: form-data; name="__proto__"\r\n\r\nx\r\n--x--\r\n',
    ],
  ])('%s is refused without falling over', async (_what, type, body) => {
    const { status } = await desk.post(FORM).set('content-type', type).send(body);
    expect([400, 403, 413]).toContain(status);
    await desk.get(FORM).expect(200);
  });

  it('waits with its answers for a sender whose session has ended; the file is chosen again', async () => {
    const typed = { ...(await marks()), name: 'Late' };
    test.clock.pass({ minutes: 13 * 60 });
    const answer = await send(typed, Buffer.alloc(50_000, 'x'));
    expect(answer.headers['location']).toMatch(/^\/sign-in/);
    const kept = await test.db.keptForm.findMany();
    expect(kept.map(({ body }) => (body as Fields)['name'])).toEqual(['Late']);
    expect(JSON.stringify(kept)).not.toContain('xxxx');
  });
});

describe('a route that says nothing of files', () => {
  it.each(['/counter/customers/00000000-0000-7000-8000-000000000000/edit', '/light', '/api/v1/vehicles/vin-check'])(
    'refuses them: %s',
    async (address) => {
      const answer = await desk.post(address).set('x-requested-with', 'fetch').field('name', 'x').attach('file', Buffer.from('x'), 'x.csv');
      expect(answer.status).toBe(415);
    },
  );

  it('refuses them of strangers too', async () => {
    const answer = await request(test.http).post('/sign-in').attach('file', Buffer.from('x'), 'x.csv');
    expect(answer.status).toBe(415);
  });
});
