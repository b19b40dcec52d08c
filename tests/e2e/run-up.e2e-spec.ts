import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { ForgetDrafts } from '../../apps/server/src/features/warm-up/drafts/forget-drafts.service.ts';
import { CardUnderTest, newThermostatJob, proven, tap } from '../support/job-card.ts';
import { logFile } from '../support/log-files.ts';
import { textOfPdf } from '../support/pdf-text.ts';
import { formsOf } from '../support/page-forms.ts';
import { type Agent, formMarks, openTestApp, type StaffName, type TestApp } from '../support/test-app.ts';

const NOW = '2026-06-09T08:00:00Z';
const SETTING = { thermostatKind: 'wax', nominalOpeningC: '87', loggedOn: '2026-06-08', heater: 'off', readings: '' };

let test: TestApp;
let staff: Record<StaffName, string>;
let tech: Agent;
let jobId: string;
let page: string;
beforeAll(async () => {
  test = await openTestApp();
});
beforeEach(async () => {
  test.clock.set(NOW);
  staff = await test.furnish();
  tech = await test.as('tech');
  jobId = await newThermostatJob(test, staff.desk);
  page = `/run-up/jobs/${jobId}`;
});
afterAll(() => test.close());

const html = async (address: string): Promise<string> => (await tech.get(address).expect(200)).text;

/** Sends the form that adds a log. @returns where it leads */
async function upload(file: string | Buffer, fields: Record<string, string> = {}): Promise<string> {
  const body = { ...formMarks(await html(page), 'log'), ...SETTING, role: 'before', ...fields };
  const call = Object.entries(body).reduce((form, [name, value]) => form.field(name, value), tech.post(`${page}/logs`));
  const answer = await call.attach('file', typeof file === 'string' ? Buffer.from(file) : file, 'tester.csv');
  expect(answer.status).toBe(303);
  return answer.headers['location'] ?? '';
}

/** Sends the form of a draft, as its page has it. @returns where it leads */
async function answer(draft: string, fields: Record<string, string>): Promise<string> {
  const form = formsOf(await html(draft), draft).find(({ name }) => name === 'draft');
  const sent = await tech
    .post(draft)
    .type('form')
    .send({ ...form?.values, ...fields, _key: randomUUID() })
    .expect(303);
  return sent.headers['location'] ?? '';
}

async function keep(file: string, fields: Record<string, string> = {}): Promise<void> {
  expect(await answer(await upload(file, fields), { then: 'keep' })).toBe(page);
}

/** The whole repair up to the keys, so that the log after it is owed. */
async function repair(): Promise<CardUnderTest> {
  const card = new CardUnderTest(jobId, tech);
  await card.done(...proven(), tap('tick', 'keys-out'));
  return card;
}

const owed = () => test.db.jobDebt.findFirst({ where: { jobId, kind: 'after-log' }, orderBy: [{ openedAt: 'desc' }, { id: 'desc' }] });
const versions = () => test.db.proofSheet.findMany({ where: { jobId }, orderBy: { version: 'asc' } });

describe('a log that is added', () => {
  it('asks for the kind of thermostat before anything else', async () => {
    const [first] = formsOf(await html(page), page).find(({ name }) => name === 'log')?.fields ?? [];
    expect(first).toBe('thermostatKind');
    expect(await upload(logFile({ opensC: 87 }), { thermostatKind: '' })).toBe(page);
    expect(await html(page)).toContain('Say which kind of thermostat the car has');
    expect(await test.db.warmUpDraft.count()).toBe(0);
  });

  it('is shown as it was understood, with what it would say, before it is kept', async () => {
    const draft = await upload(logFile({ opensC: null, minutes: 30 }));
    const text = await html(draft);
    for (const said of [
      'Engine Coolant Temperature (°C)',
      '1\u202f800',
      '1.0 readings a second',
      'left out and not kept: Latitude, Longitude',
    ])
      expect(text).toContain(said);
    expect(text).toContain('stuck open, quite sure');
    expect(await test.db.warmUpLog.count()).toBe(0);
    expect(await html(page)).toContain('Not kept yet:');
  });

  it('is kept with job and car, who and when, and its readings to the last bit', async () => {
    await keep(logFile({ opensC: null, minutes: 30 }));
    const rows = await test.db.warmUpLog.findMany({ include: { job: { select: { vehicleId: true } } } });
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({
      jobId,
      role: 'before',
      verdict: 'stuck-open',
      sampleCount: 1800,
      keptById: staff.tech,
      thermostatKind: 'wax',
    });
    expect(rows[0]?.vehicleId).toBe(rows[0]?.job.vehicleId);
    expect(await test.db.warmUpDraft.count()).toBe(0);
    const text = await html(page);
    expect(text).toContain('Before: stuck open, quite sure');
    expect(text).toContain('tester.csv, 1800 readings');
  });

  it('leaves no place behind, neither while it waits nor when it is kept', async () => {
    const draft = await upload(logFile({ opensC: 87 }));
    const { gunzipSync } = await import('node:zlib');
    const [waiting] = await test.db.warmUpDraft.findMany();
    expect(gunzipSync(waiting?.text ?? Buffer.alloc(0)).toString()).not.toContain('53.34');
    await answer(draft, { then: 'keep' });
    const [kept] = await test.db.warmUpLog.findMany();
    expect(JSON.stringify(kept?.understood)).not.toContain('53.34');
    expect(gunzipSync(kept?.samples ?? Buffer.alloc(0)).length).toBe(1500 * 8 * 8);
  });

  it('is thrown away whole, or forgotten after a week', async () => {
    const first = await upload(logFile({ opensC: 87 }));
    await tech
      .post(`${first}/discard`)
      .type('form')
      .send(formMarks(await html(first), 'discard'))
      .expect(303);
    expect(await test.db.warmUpDraft.count()).toBe(0);
    await upload(logFile({ opensC: 87 }));
    test.clock.pass({ minutes: 8 * 24 * 60 });
    await test.app.get(ForgetDrafts).forget();
    expect(await test.db.warmUpDraft.count()).toBe(0);
  });

  it.each([
    ['a picture', Buffer.from('89504e470d0a1a0a0000000d', 'hex'), 'not a text file'],
    ['nothing at all', Buffer.alloc(0), 'does not look like a table'],
    ['one word', Buffer.from('hello'), 'does not look like a table'],
  ])('is refused beside its field where it is %s, with what was typed', async (_what, file, words) => {
    expect(await upload(file, { nominalOpeningC: '83' })).toBe(page);
    const text = await html(page);
    expect(text).toContain(words);
    expect(text).toContain('value="83"');
  });

  it('is refused where it is larger than is taken', async () => {
    expect(await upload(Buffer.alloc(10 * 1024 * 1024 + 1, 'a'))).toBe(page);
    expect(await html(page)).toContain('“tester.csv” is larger than 10 MB');
  }, 30_000);

  it.each([
    ['loggedOn', '2026-06-10', 'still to come'],
    ['loggedOn', '2026-02-30', 'the day on which this was driven'],
    ['nominalOpeningC', '190', 'from 50 to 120'],
  ])('is refused with %s %s', async (field, value, words) => {
    expect(await upload(logFile({ opensC: 87 }), { [field]: value })).toBe(page);
    expect(await html(page)).toContain(words);
  });

  it('can be typed from a tester, and changed before it is kept', async () => {
    const body = { ...formMarks(await html(page), 'log'), ...SETTING, role: 'before', readings: '0 18\n1:30 27\n3 36\nfive 44' };
    const post = async (fields: object) => (await tech.post(`${page}/logs`).type('form').send(fields).expect(303)).headers['location'];
    expect(await post(body)).toBe(page);
    expect(await html(page)).toContain('Line 4, &#x27;five 44&#x27;');
    const draft = (await post({ ...body, _key: randomUUID(), readings: '0 18\n1:30 27\n3 36\n4.5 44' })) ?? '';
    expect(await answer(draft, { readings: '0 18\n1:30 27\n3 36\n4.5 44\n6 52', then: 'read' })).toBe(draft);
    expect(await answer(draft, { then: 'keep' })).toBe(page);
    expect(await test.db.warmUpLog.findMany()).toMatchObject([{ source: 'typed', sampleCount: 5, verdict: 'not-enough' }]);
  });
});

describe('a car whose valve has no one opening temperature', () => {
  it.each(['heated-wax', 'twin', 'motor-valve', 'unknown'])('gets a description and no opening: %s', async (thermostatKind) => {
    await keep(logFile({ opensC: 87 }), { thermostatKind });
    const text = await html(page);
    expect(text).toMatch(/Opens at<\/th><td>not to be told/);
    expect(text).toContain('the climb ends, ');
    expect(text).not.toContain('thermostat opens');
  });

  it('is trained people’s work where it is a hybrid', async () => {
    await keep(logFile({ opensC: 87 }), { thermostatKind: 'hybrid' });
    expect(await html(page)).toContain('Trained people only');
  });
});

describe('what a file does not say', () => {
  const bare = logFile({ opensC: 87 }).replace(' (°C)', '').replace('Time (s)', 'Time');

  it('is asked, answered, and remembered for the next file of its shape', async () => {
    const draft = await upload(bare);
    const asked = await html(draft);
    expect(asked).toContain('does not say');
    expect(asked).toContain('In which unit is');
    expect(asked).not.toContain('Keep this log with the job');
    expect(await answer(draft, { then: 'keep' })).toBe(draft);
    expect(await test.db.warmUpLog.count()).toBe(0);
    await answer(draft, { unitCoolant: '°C', unitTime: 's', then: 'read' });
    expect(await html(draft)).toContain('Keep this log with the job');
    await answer(draft, { then: 'keep' });
    expect(await test.db.warmUpLog.count()).toBe(1);
    const next = await upload(bare, { role: 'after' });
    expect(await html(next)).toContain('Keep this log with the job');
  });

  it('can be corrected where it was understood wrongly', async () => {
    const draft = await upload(logFile({ opensC: 87 }));
    await answer(draft, { columnCoolant: 'Intake Air Temperature (°C)', then: 'read' });
    expect(await html(draft)).toMatch(/Coolant<\/th><td[^>]*>Intake Air Temperature/);
  });

  it('is no place for anything else', async () => {
    const draft = await upload(bare);
    expect(await answer(draft, { unitCoolant: 'bananas', then: 'read' })).toBe(draft);
    expect(await html(draft)).toContain('is no unit for coolant');
  });
});

describe('the proof', () => {
  it('is owed with a date once the keys are out, and settled by the log after the repair', async () => {
    await keep(logFile({ opensC: null, minutes: 30 }));
    const card = await repair();
    expect(await owed()).toMatchObject({ endedAt: null });
    expect(await html(page)).toContain('Proof still owed by 23 Jun 2026');
    expect(await card.page('after-log')).toContain('To the Run-up');
    await keep(logFile({ opensC: 87 }), { role: 'after', loggedOn: '2026-06-09' });
    expect(await owed()).toMatchObject({ ending: 'done' });
    expect((await card.read()).debts.find(({ kind }) => kind === 'after-log')?.state).toBe('done');
    const text = await html(page);
    expect(text).toContain('Warms up as it should');
    expect(text).not.toContain('still owed');
    expect(text).toMatch(/Settles at<\/th><td>59 °C<\/td><td>87 °C/);
  });

  it('is not settled by a log that proves nothing, nor by one that shows it is still wrong', async () => {
    await repair();
    await keep(logFile({ opensC: 87, minutes: 4 }), { role: 'after' });
    expect(await owed()).toMatchObject({ endedAt: null });
    await keep(logFile({ opensC: null, minutes: 30 }), { role: 'after' });
    expect(await owed()).toMatchObject({ endedAt: null });
    expect(await html(page)).toContain('Still not right');
  });

  it('is owed again when its log turns out to be another car’s', async () => {
    await repair();
    await keep(logFile({ opensC: 87 }), { role: 'after' });
    expect(await owed()).toMatchObject({ ending: 'done' });
    const [{ id } = { id: '' }] = await test.db.warmUpLog.findMany();
    const log = `/run-up/logs/${id}`;
    const withdraw = async (why: string) =>
      (
        await tech
          .post(`${log}/withdraw`)
          .type('form')
          .send({ ...formMarks(await html(log), 'withdraw'), why })
      ).headers['location'];
    expect(await withdraw('')).toBe(log);
    expect(await withdraw('The other Orla’s')).toBe(page);
    expect(await owed()).toMatchObject({ endedAt: null });
    expect(await html(log)).toContain('The other Orla’s');
    expect((await versions()).map(({ outcome }) => outcome)).toEqual(['works-now', 'owed']);
    await keep(logFile({ opensC: 88 }), { role: 'after' });
    expect(await owed()).toMatchObject({ ending: 'done' });
    expect(await test.db.jobDebt.count({ where: { jobId, kind: 'after-log' } })).toBe(2);
  });

  it('goes on a sheet of its own: a version for each state, the older ones as they were', async () => {
    await keep(logFile({ opensC: null, minutes: 30 }));
    await keep(logFile({ opensC: 87 }), { role: 'after', loggedOn: '2026-06-09' });
    const sheets = await versions();
    expect(sheets.map(({ version, outcome }) => [version, outcome])).toEqual([
      [1, 'owed'],
      [2, 'cured'],
    ]);
    const pdf = async (address: string): Promise<Buffer> => (await tech.get(address).expect(200)).body as Buffer;
    const newest = await pdf(`${page}/proof.pdf`);
    const words = await textOfPdf(newest);
    for (const said of [
      'version 2',
      'Warms up as it should',
      'Before, 8 Jun 2026',
      'After, 9 Jun 2026',
      'thermostat opens',
      'stuck open',
      'Odile Quill',
    ])
      expect(words).toContain(said);
    expect(words).toMatch(/77|76 to 98/);
    const first = await pdf(`/run-up/proofs/${sheets[0]?.id}/sheet.pdf`);
    expect(await textOfPdf(first)).toContain('The proof is still owed');
    // Printed once, the same bytes ever after.
    expect((await pdf(`/run-up/proofs/${sheets[0]?.id}/sheet.pdf`)).equals(first)).toBe(true);
    expect(await test.db.proofSheetFile.count()).toBe(2);
    for (const { id } of sheets) expect(await html(page)).toContain(`/run-up/proofs/${id}/sheet.pdf`);
  }, 60_000);

  it('is not made twice of the same', async () => {
    await keep(logFile({ opensC: 87 }), { role: 'after' });
    await keep(logFile({ opensC: 87, minutes: 3 }), { role: 'after' });
    expect(await versions()).toHaveLength(1);
    await tech.get(`/run-up/jobs/${randomUUID()}/proof.pdf`).expect(404);
  });

  it('stands beside the car’s last visit', async () => {
    await keep(logFile({ opensC: 87 }), { role: 'after' });
    const { vehicleId, customerId, templateId } = await test.db.job.findUniqueOrThrow({ where: { id: jobId } });
    const next = await test.db.job.create({
      data: { vehicleId, customerId, templateId, complaint: 'Cold again', createdAt: test.clock.now(), createdById: staff.desk },
    });
    page = `/run-up/jobs/${next.id}`;
    await keep(logFile({ opensC: 72, minutes: 30 }));
    const text = await html(page);
    expect(text).toContain('Last visit');
    expect(text).toMatch(/Settles at<\/th><td>87 °C<\/td><td>72 °C/);
  });
});

describe('a look at the gauge', () => {
  const look = async (fields: Record<string, string>): Promise<void> => {
    const marks = formMarks(await html(page), 'gauge');
    await tech
      .post(`${page}/gauge`)
      .type('form')
      .send({ ...marks, outsideC: '', gaugeRole: 'before', ...fields })
      .expect(303);
  };

  it('supports “never warms”, and nothing finer', async () => {
    await look({ reading: 'stays-cold', minutesDriven: '30', outsideC: '−2' });
    await look({ reading: 'middle', minutesDriven: '30' });
    const text = await html(page);
    expect(text).toContain('supports “never warms”');
    expect(text).toContain('proves nothing');
    expect(await test.db.gaugeLook.findMany({ orderBy: { keptAt: 'asc' } })).toHaveLength(2);
    expect(await test.db.warmUpLog.count()).toBe(0);
  });

  it('in the red says what to do first', async () => {
    await look({ reading: 'hot', minutesDriven: '5' });
    expect(await html(page)).toContain('Stop the engine and do not drive on');
  });
});

describe('the room', () => {
  it('lists who owes a log, and is open to everybody who works here', async () => {
    await repair();
    for (const name of ['desk', 'tech', 'owner'] as const) {
      const { text } = await (await test.as(name)).get('/run-up').expect(200);
      expect(text).toContain('One car that went owes the log after the repair.');
      expect(text).toContain(page);
    }
    test.clock.pass({ minutes: 20 * 24 * 60 });
    tech = await test.as('tech');
    expect(await html('/run-up')).toContain('one of them late');
    expect(await html(page)).toContain('That day is over.');
  });

  it('is found from the job', async () => {
    const { text } = await (await test.as('desk')).get(`/counter/jobs/${jobId}`).expect(200);
    expect(text).toContain(page);
  });
});
