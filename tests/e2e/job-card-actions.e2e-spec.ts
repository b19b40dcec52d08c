import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import request from 'supertest';
import { stepsOf, THERMOSTAT_JOB } from '#libs/checklist';
import { CardUnderTest, newThermostatJob, opened, proven, tap } from '../support/job-card.ts';
import { type Agent, openTestApp, type StaffName, type TestApp } from '../support/test-app.ts';

let test: TestApp;
let staff: Record<StaffName, string>;
let tech: Agent;
let card: CardUnderTest;

beforeAll(async () => {
  test = await openTestApp();
});
beforeEach(async () => {
  test.clock.set('2026-06-09T08:00:00Z');
  staff = await test.furnish();
  tech = await test.as('tech');
  card = new CardUnderTest(await newThermostatJob(test, staff.desk), tech);
});
afterAll(() => test.close());

describe('every tap once', () => {
  it('though its form is sent twice at once', async () => {
    const body: Record<string, string> = { ...(await card.marks('keys-tagged', 'work')), act: 'do' };
    const post = () => tech.post(`${card.url()}/actions`).type('form').send(body);
    const [first, second] = await Promise.all([post(), post()]);
    expect(first.headers['location']).toBe(card.url());
    expect(second.headers['location']).toBe(card.url());
    expect(await test.db.jobAction.findMany({ where: { jobId: card.job }, select: { id: true } })).toEqual([{ id: body['_key'] }]);
  });

  it('though the tablet sends it again, in another time zone', async () => {
    const action = tap('tick', 'keys-tagged');
    await card.done(action);
    expect(await card.send({ ...action, readAt: '2026-06-09T10:00:00.000+02:00' })).toEqual([{ id: action.id, difference: null }]);
    expect(await test.db.jobAction.count({ where: { jobId: card.job } })).toBe(1);
    expect((await card.read()).differences).toEqual([]);
  });

  it('and the waste with it, whatever is taken back', async () => {
    await card.done(...opened());
    const booked = tap('record', 'waste-booked', { litres: 3.2 });
    await card.done(booked);
    await card.send(booked);
    const litres = async () => (await test.db.wasteEntry.findMany({ where: { jobId: card.job } })).map(({ volumeL }) => volumeL.toNumber());
    expect(await litres()).toEqual([3.2]);
    await card.done(tap('take-back', 'waste-booked'), tap('record', 'waste-booked', { litres: 3.5 }));
    expect(await litres()).toEqual([3.2, 0.3]);
  });

  it('and one of a microlitre books nothing', async () => {
    await card.done(...opened(), tap('record', 'waste-booked', { litres: 0.000001 }));
    expect(await test.db.wasteEntry.count()).toBe(0);
  });

  it('on two tablets: the later one is a difference that a person settles', async () => {
    await card.done(...opened());
    const other = tap('record', 'housing-off', null);
    await card.done(tap('tick', 'housing-off'));
    await card.done(other); // the same said again agrees
    const [late] = await card.send(tap('record', 'drained', { litres: 5 }));
    expect(late?.difference).toContain('already recorded by Jory');
    const [difference] = (await card.read()).differences;
    await card.submit('drained', 'settle', { act: 'settle', step: 'card', of: difference?.actionId ?? '' });
    expect((await card.read()).differences).toMatchObject([{ isSettled: true }]);
    expect(await card.page()).not.toContain('Did not fit the card');
  });
});

describe('taking back', () => {
  it('is free for half a minute and asks why afterwards', async () => {
    await card.submit('keys-tagged', 'work', { act: 'do' });
    await card.submit('keys-tagged', 'just-done', { act: 'take-back' });
    expect((await card.step('keys-tagged'))?.state).toBe('taken-back');

    await card.submit('keys-tagged', 'work', { act: 'do' });
    test.clock.pass({ minutes: 1 });
    expect(await card.page('keys-tagged')).not.toContain('value="just-done"');
    expect(await card.submit('keys-tagged', 'take-back', { act: 'take-back', takenBackWhy: '' })).toBe(card.url('keys-tagged'));
    expect(await card.page('keys-tagged')).toContain('say why it is taken back');
    await card.submit('keys-tagged', 'take-back', { act: 'take-back', takenBackWhy: 'wrong car' });
    expect((await card.step('keys-tagged'))?.state).toBe('taken-back');
  });
});

describe('beside the steps', () => {
  it('takes notes, findings, waits and time, and leaves a step out with a reason', async () => {
    await card.submit('tray', 'note', { act: 'note', note: 'Clip brittle' });
    await card.submit('tray', 'finding', { act: 'finding', found: 'Top hose swollen', severity: 'soon' });
    await card.submit('tray', 'wait', { act: 'wait', step: 'card', waitFor: 'part', until: '2026-06-11', waitWords: 'the pump', who: '' });
    await card.submit('tray', 'time', { act: 'start', step: 'opening' });
    await card.submit('covered', 'not-here', { act: 'not-here', notHere: 'nothing to cover' });
    const read = await card.read();
    expect(read.findings).toMatchObject([{ words: 'Top hose swollen' }]);
    expect(read.steps.find(({ key }) => key === 'covered')?.state).toBe('not-applicable');
    expect(await test.db.jobWait.findMany({ where: { jobId: card.job } })).toMatchObject([
      { kind: 'part', words: 'the pump', endedAt: null },
    ]);
    const page = await card.page('tray');
    expect(page).toContain('expected by 11 Jun 2026');
    expect(page).toContain('Stop your time on');
    const [of] = await test.db.jobAction.findMany({ where: { jobId: card.job, kind: 'wait' } });
    await card.submit('tray', 'wait-over', { act: 'wait-over', step: 'card', of: of?.id ?? '' });
    expect(await test.db.jobWait.count({ where: { endedAt: null } })).toBe(0);
  });

  it('goes back to be opened, and asks to measure again', async () => {
    await card.done(...proven());
    await card.submit('run-hot', 'go-back', { act: 'go-back', step: 'card', to: 'opened', backWhy: 'drips at the housing' });
    const read = await card.read();
    expect(read.steps.find(({ key }) => key === 'drained')?.state).toBe('open');
    expect(read.holds['safe-to-open']?.state).toBe('shut');
  });
});

describe('what can’t be', () => {
  it('is not found: a job, a step, an address', async () => {
    await tech.get(card.url('elsewhere')).expect(404);
    await tech.get(`${card.url()}?step=a&step=b`).expect(404);
    await tech.get(`/bays/jobs/${randomUUID()}/card`).expect(404);
    await tech.get('/bays/jobs/robert/card').expect(404);
    await tech.get(`/api/v1/job-cards/${randomUUID()}`).expect(404);
    await tech.post(`/api/v1/job-cards/${randomUUID()}/actions`).set('x-requested-with', 'fetch').send({ actions: [] }).expect(404);
    const marks = await card.marks('tray', 'work');
    await tech
      .post(`${card.url()}/actions`)
      .type('form')
      .send({ ...marks, step: 'elsewhere', act: 'do' })
      .expect(404);
  });

  it('is refused for people without a session', async () => {
    await request(test.http).get(card.api).expect(401);
    await request(test.http).post(`${card.api}/actions`).send({ actions: [] }).expect(401);
  });

  it('of an unknown step is kept as a difference when a tablet sends it', async () => {
    const [answer] = await card.send(tap('tick', 'elsewhere'));
    expect(answer?.difference).toContain("no step 'elsewhere'");
    expect(await test.db.jobAction.count({ where: { jobId: card.job } })).toBe(1);
  });

  it('of an action that is on another card is said', async () => {
    const action = tap('tick', 'keys-tagged');
    await card.done(action);
    card = new CardUnderTest(await newThermostatJob(test, staff.desk), tech);
    await tech
      .post(`${card.api}/actions`)
      .set('x-requested-with', 'fetch')
      .send({ actions: [action] })
      .expect(409);
  });

  it('of two actions of a device under one number is said', async () => {
    const device = { deviceId: randomUUID(), deviceSeq: 1 };
    await card.done({ ...tap('tick', 'keys-tagged'), ...device });
    await tech
      .post(`${card.api}/actions`)
      .set('x-requested-with', 'fetch')
      .send({ actions: [{ ...tap('tick', 'covered'), ...device }] })
      .expect(409);
  });

  it.each([
    ['nothing', undefined],
    ['null', null],
    ['a list', []],
    ['words', { actions: 'x' }],
    ['a null action', { actions: [null] }],
    ['a number for an id', { actions: [{ id: 1 }] }],
    ['a stranger', { actions: [{ ...tap('tick', 'tray'), by: randomUUID() }] }],
    ['201 actions', { actions: Array.from({ length: 201 }, () => tap('tick', 'tray')) }],
    ['deep nesting', { actions: [{ ...tap('tick', 'tray'), value: nested(3000) }] }],
  ])('answers %s with what to change', async (_what, body) => {
    const post = tech.post(`${card.api}/actions`).set('x-requested-with', 'fetch').type('json');
    const answer = await (body === undefined ? post : post.send(JSON.stringify(body)));
    expect(answer.status).toBe(400);
    expect(answer.headers['content-type']).toMatch(/problem\+json/);
    expect(await test.db.jobAction.count()).toBe(0);
  });

  it('keeps odd values of every kind on every step, and never fails', async () => {
    const odd = [
      undefined,
      1e308,
      '\0',
      'x'.repeat(5000),
      ['a'],
      { litres: -1 },
      { of: '\uD800' },
      { for: 'part', until: 'never' },
      { for: 'cold', until: '+275760-09-13' },
    ];
    const kinds = [
      'tick',
      'record',
      'pass',
      'pass-without',
      'not-applicable',
      'take-back',
      'pour-jug',
      'start-timer',
      'stop-timer',
      'note',
      'photo',
      'finding',
      'go-back',
      'wait',
      'wait-over',
      'confirm-name',
      'settle-difference',
      'burn',
    ];
    const steps = ['measured-cold', 'drained', 'first-fill', 'torqued', 'waste-booked', 'keys-out', 'cold-level', 'card', 'opening'];
    for (const step of steps) {
      const actions = kinds.flatMap((kind) => odd.map((value) => tap(kind, step, value)));
      for (let from = 0; from < actions.length; from += 200) await card.send(...actions.slice(from, from + 200));
    }
    expect(await test.db.jobAction.count({ where: { jobId: card.job } })).toBe(steps.length * kinds.length * odd.length);
    const read = await card.read();
    expect(read.steps).toHaveLength(stepsOf(THERMOSTAT_JOB).length);
    await card.page();
  });

  it.each([
    ['an empty body', {}],
    ['an unknown act', { act: 'burn', step: 'tray' }],
    ['lists for values', { act: ['do', 'do'], step: ['tray', 'drained'] }],
    ['a null sign', { act: 'note', step: 'tray', note: '\0' }],
    ['a prototype', { act: 'do', step: '__proto__' }],
    ['a wait till never', { act: 'wait', step: 'card', waitFor: 'part', until: 'never' }],
  ])('takes %s from a form and never fails', async (_what, body) => {
    const marks = await card.marks('tray', 'work');
    const answer = await tech
      .post(`${card.url()}/actions`)
      .type('form')
      .send({ ...marks, ...body });
    expect([303, 404]).toContain(answer.status);
    expect(await test.db.jobAction.count()).toBe(0);
  });
});

function nested(depth: number): unknown {
  let value: unknown = 1;
  for (let level = 0; level < depth; level += 1) value = [value];
  return value;
}
