import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import request from 'supertest';
import { tableOf } from '../../libs/warm-up/testing/traces.ts';
import { type Agent, openTestApp, type TestApp } from '../support/test-app.ts';

const DATA = path.resolve(import.meta.dirname, '../data/warm-up');
const CALL = '/api/v1/warm-up/analyses';

let test: TestApp;
let tech: Agent;
beforeAll(async () => {
  test = await openTestApp();
  await test.furnish();
  tech = await test.as('tech');
});
afterAll(() => test.close());

interface Answer {
  status: number;
  type?: string;
  detail?: string;
  errors?: { field: string; message: string }[];
  verdict?: string;
  confidence?: number;
  openingC?: { estimate: number; low: number; high: number } | null;
  understood?: { columns: { quantity: string; unit: string | null; unitFrom: string | null }[]; locationColumnsDropped: string[] };
  asks?: { field: string; suggestion: { answer: string } | null }[];
  [name: string]: unknown;
}

async function upload(file: string | Buffer, fields: Record<string, string> = {}, name = 'log.csv'): Promise<Answer> {
  const form = Object.entries(fields).reduce((call, [field, value]) => call.field(field, value), tech.post(CALL));
  const answer = await form.attach('file', typeof file === 'string' ? Buffer.from(file) : file, name);
  return { ...(answer.body as Answer), status: answer.status };
}

async function send(body: unknown): Promise<Answer> {
  const answer = await tech.post(CALL).send(body as object);
  return { ...(answer.body as Answer), status: answer.status };
}

const read = (name: string): string => readFileSync(path.join(DATA, name), 'utf8');

/** A drive from cold whose climb ends at 87 °C after 670 s. */
const climb = (seconds = 1500) =>
  Array.from({ length: seconds }, (_, timeS) => ({
    timeS,
    coolantC: Math.min(87, 20 + timeS * 0.1),
    speedKmh: 60,
    intakeC: 20,
    ambientC: 18,
  }));

describe('every stored log through the call', () => {
  const truths = tableOf(read('TRUTH.csv'));

  it.each(truths)('$name: $acceptable_verdicts', async (truth) => {
    const answer = await upload(read(`${truth['name']}.csv`), { nominalOpeningC: truth['nominal_c'] ?? '' });
    expect(answer.status).toBe(200);
    expect((truth['acceptable_verdicts'] ?? '').split('|')).toContain(answer.verdict);
    if (truth['opening_testable'] !== 'yes') return;
    expect(Math.abs((answer.openingC?.estimate ?? 0) - Number(truth['true_open_c']))).toBeLessThanOrEqual(2);
  });

  // M. Weber, Automotive OBD-II Dataset, KIT, DOI 10.35097/1130, CC BY 4.0: one car, which nobody labelled. It is judged sound; the one
  // drive in frosty town traffic never gets warm enough to tell.
  it.each(readdirSync(DATA).filter((name) => name.startsWith('KIT_')))('%s', async (name) => {
    const answer = await upload(read(name), { nominalOpeningC: '88' });
    expect(answer.verdict).toBe(name.includes('20180320') ? 'not-enough' : 'normal');
  });
});

describe('the answer', () => {
  it('holds what its readers rely on, from samples as from a file', async () => {
    const samples = climb();
    const json = await send({ samples, nominalOpeningC: 87 });
    const csv = ['time_s,coolant_c,speed_kmh,intake_c,ambient_c', ...samples.map((one) => Object.values(one).join(','))].join('\n');
    const file = await upload(csv, { nominalOpeningC: '87' });
    expect(json).toMatchObject({ status: 200, verdict: 'normal', coldStart: true, plateauC: 87 });
    // The exact case of a line and a level (computed): it bends after 670 s at 87 °C.
    expect(json).toMatchObject({ knee: { timeS: expect.closeTo(670, -1) as unknown, tempC: expect.closeTo(87, 0) as unknown } });
    expect(json.warmUpRateCPerMin).toBeCloseTo(6, 0);
    expect(json.reasons).toEqual(expect.arrayContaining([expect.any(String)]));
    for (const name of ['verdict', 'confidence', 'openingC', 'firstPeakC', 'plateauC', 'coldStart', 'warmUpRateCPerMin', 'reasons'])
      expect([name, file[name]]).toEqual([name, json[name]]);
  });

  it('gives an opening temperature for plain wax only', async () => {
    const opening = async (known: object) => (await send({ samples: climb(), ...known })).openingC;
    expect(await opening({ nominalOpeningC: 87 })).not.toBeNull();
    expect(await opening({ thermostatKind: 'wax' })).not.toBeNull();
    expect(await opening({})).toBeNull();
    for (const thermostatKind of ['heated-wax', 'twin', 'motor-valve', 'hybrid', 'unknown'])
      expect(await opening({ thermostatKind, nominalOpeningC: 87 })).toBeNull();
  });

  it('is for staff only, whatever is sent', async () => {
    expect(
      (
        await request(test.http)
          .post(CALL)
          .send({ samples: climb(10) })
      ).status,
    ).toBe(401);
    expect((await request(test.http).post(CALL).attach('file', Buffer.from('x'), 'x.csv')).status).toBe(401);
  });
});

describe('units that the file does not say', () => {
  const rows = Array.from({ length: 900 }, (_, second) => `${second},${Math.min(190, 60 + second * 0.2).toFixed(1)}`);
  const bare = ['Time (s),Coolant Temp', ...rows].join('\n');

  it('are asked for, with what was understood and never a guess taken for the truth', async () => {
    const answer = await upload(bare);
    expect(answer).toMatchObject({ status: 422, type: '/problems/log-asks' });
    expect(answer.errors).toEqual([{ field: 'units', message: expect.stringMatching(/In which unit is 'Coolant Temp'/) as unknown }]);
    expect(answer.understood?.columns.map(({ quantity, unit }) => [quantity, unit])).toEqual([['coolant', null]]);
    expect(answer.asks?.[0]?.suggestion?.answer).toBe('°F');
  });

  it.each(['°F', 'imperial', 'coolant=F', '{"coolant":"°F"}'])('are answered by the field units: %s', async (units) => {
    const answer = await upload(bare, { units });
    expect(answer.status).toBe(200);
    expect(answer.plateauC).toBeCloseTo(((190 - 32) * 5) / 9, 0);
  });

  it('are no secret of other fields: an answer that is none is named', async () => {
    expect(await upload(bare, { units: 'bananas' })).toMatchObject({ status: 400, errors: [{ field: 'units' }] });
    expect(await upload('t,a,b\n0,20,1\n1,21,1\n2,22,1\n', {})).toMatchObject({ status: 422, errors: [{ field: 'columns' }] });
    expect((await upload('t,a,b\n0,20,1\n1,21,1\n2,22,1\n', { columns: 'coolant=a,time=t', units: 'coolant=°C,time=s' })).status).toBe(200);
  });
});

describe('other hands’ files', () => {
  const csv = (header: string, row: (second: number) => string, count = 900) =>
    [header, ...Array.from({ length: count }, (_, second) => row(second))].join('\n');
  const warming = (second: number) => Math.min(88, 15 + second * 0.12);

  it('are read in the character set their logger wrote', async () => {
    const text = csv('Time (s);Kühlmitteltemperatur (°C)', (second) => `${second};${warming(second).toFixed(1).replace('.', ',')}`);
    const expected = await upload(text);
    expect(expected.status).toBe(200);
    const utf16 = Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(text, 'utf16le')]);
    for (const bytes of [Buffer.from(text, 'latin1'), utf16, Buffer.from(`\uFEFF${text}`)])
      expect(await upload(bytes)).toMatchObject({ status: 200, plateauC: expected.plateauC });
  });

  it('lose their columns of places, and say so', async () => {
    const answer = await upload(csv('time_s,coolant_c,Latitude,Longitude', (second) => `${second},${warming(second)},51.5${second},-0.12`));
    expect(answer.understood?.locationColumnsDropped).toEqual(['Latitude', 'Longitude']);
    expect(JSON.stringify(answer)).not.toContain('51.5');
  });

  it.each([
    ['a picture', Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex'), 400],
    ['nothing', Buffer.alloc(0), 400],
    ['one word', 'hello', 400],
    ['a header and no rows', 'time_s,coolant_c\n', 422],
    ['rows without figures', csv('time_s,coolant_c', () => 'a,b', 20), 422],
    ['a page of the web', '<!doctype html><html><body>Not found</body></html>', 400],
    ['UTF-16 without its mark', Buffer.from('time_s,coolant_c\n0,20\n', 'utf16le'), 400],
  ])('that hold %s are refused with what to change', async (_what, bytes, status) => {
    const answer = await upload(bytes);
    expect(answer.status).toBe(status);
    expect(answer.detail).toMatch(/\w+ \w+ \w+/);
  });

  it.each([
    ['a huge figure', '1e308'],
    ['a minus huge one', '-1e308'],
    ['no number', 'NaN'],
    ['infinity', 'Infinity'],
    ['a formula', '=1+1'],
    ['a command', "=cmd|' /C calc'!A0"],
    ['markup', '<script>alert(1)</script>'],
  ])('with %s among their cells lose that cell', async (_what, cell) => {
    const answer = await upload(csv('time_s,coolant_c', (second) => `${second},${second === 400 ? cell : warming(second).toFixed(1)}`));
    expect(answer).toMatchObject({ status: 200 });
    expect(answer.plateauC).toBeCloseTo(88, 0);
  });

  it('that are too long or too large are refused before they cost anything', async () => {
    const long = csv('time_s,coolant_c', (second) => `${second / 10},50`, 36_001);
    expect((await upload(long)).detail).toMatch(/36001 readings.*at most 36000/);
    const large = await upload(Buffer.alloc(10 * 1024 * 1024 + 1, 'a'));
    expect(large).toMatchObject({
      status: 413,
      errors: [{ field: 'file', message: expect.stringMatching(/larger than 10 MB/) as unknown }],
    });
  }, 30_000);
});

describe('samples', () => {
  it('are taken up to 36,000 at once, on this call alone', async () => {
    const samples = Array.from({ length: 36_000 }, (_, index) => ({
      ...climb(1)[0],
      timeS: index / 10,
      coolantC: Math.min(87, 20 + index / 100),
    }));
    expect(await send({ samples, nominalOpeningC: 87 })).toMatchObject({ status: 200, verdict: 'normal' });
    expect(await send({ samples: [...samples, { timeS: 3600, coolantC: 87 }] })).toMatchObject({ status: 413 });
    expect((await tech.post('/api/v1/vehicles/vin-check').send({ vin: 'x'.repeat(300_000) })).status).toBe(413);
  }, 30_000);

  it.each([
    ['none', [], 'samples'],
    ['no list', 'a', 'samples'],
    ['no object', [1], 'samples.0'],
    ['text for a number', [{ timeS: '0', coolantC: 20 }], 'samples.0.timeS'],
    ['no coolant', [{ timeS: 0 }], 'samples.0.coolantC'],
    ['only unread coolant', [{ timeS: 0, coolantC: null }], 'samples'],
    ['text for a speed', [{ timeS: 0, coolantC: 20, speedKmh: 'fast' }], 'samples.0.speedKmh'],
  ])('are refused where they are %s, naming the place', async (_what, samples, field) => {
    expect(await send({ samples })).toMatchObject({ status: 400, errors: [{ field }] });
  });

  it('may hold what no engine does: it is left out and counted', async () => {
    const samples = [...climb(), { timeS: 1e308, coolantC: 1e308 }, { timeS: 5, coolantC: -1e308 }];
    expect(await send({ samples, nominalOpeningC: 87 })).toMatchObject({ status: 200, verdict: 'normal' });
  });

  it.each([
    ['nominalOpeningC', 188],
    ['nominalOpeningC', '1e3'],
    ['thermostatKind', 'bimetal'],
    ['heater', 'lukewarm'],
    ['colour', 'green'],
  ])('go with known facts only: %s %s', async (field, value) => {
    expect(await send({ samples: climb(60), [field]: value })).toMatchObject({ status: 400, errors: [{ field }] });
  });
});
