import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { makeJob } from '../support/factories.ts';
import { type Agent, formMarks, openTestApp, type StaffName, type TestApp } from '../support/test-app.ts';

let test: TestApp;
let staff: Record<StaffName, string>;
let desk: Agent;
beforeAll(async () => {
  test = await openTestApp();
});
beforeEach(async () => {
  staff = await test.furnish();
  desk = await test.as('desk');
});
afterAll(() => test.close());

/** A page with the signs that are written safely as they are read. */
async function read(address: string): Promise<string> {
  const { text } = await desk.get(address).expect(200);
  return text.replaceAll('&#x27;', "'").replaceAll('&#x3D;', '=').replaceAll('\u00a0', ' ');
}

const SUPPLIERS = '/parts-bench/orders/suppliers';
const VARIANTS = '/parts-bench/orders/variants';

async function send(
  on: string,
  { form, to = on, body }: { form: string; to?: string; body: Record<string, string | string[]> },
): Promise<string> {
  const text = await read(on);
  const answer = await desk
    .post(to)
    .type('form')
    .send({ ...formMarks(text, form), ...body });
  expect(answer.status).toBe(303);
  return String(answer.headers['location']);
}

const supplier = {
  name: 'Halfmoon Factors',
  accountNumber: 'ORM',
  phone: '0555 0377',
  email: '',
  returnDays: '28',
  windowStart: 'arrived',
  restockingPct: '7,5',
  returnCarriage: '5.20',
  carriage: '3,90',
  daysToCredit: '30',
  unopenedOnly: 'on',
};
const addSupplier = (change: Record<string, string> = {}): Promise<string> =>
  send(`${SUPPLIERS}/new`, { form: 'supplier', body: { ...supplier, ...change } });

const FEATURES = ['seal', 'flangeDiameterMm', 'overallHeightMm'];
const variant = {
  family: 'thermostat',
  partNumber: 'HM-T52',
  name: 'Thermostat 82 °C',
  priceNet: '19,80',
  coreCharge: '0',
  engineCode: 'tk14',
  builtFrom: '2014-02',
  builtTo: '2017-03',
  catalogue: 'Halfmoon list 2026',
  provenance: 'listing',
  feature: FEATURES,
  value: ['flat-gasket', '52,0', ''],
};
async function addVariant(change: Record<string, string | string[]> = {}): Promise<string> {
  const { id: supplierId } = await test.db.supplier.findFirstOrThrow();
  return send(`${VARIANTS}/new?family=thermostat`, { form: 'variant', to: `${VARIANTS}/new`, body: { supplierId, ...variant, ...change } });
}

describe('a supplier', () => {
  it('is kept with its terms, which are shown in one line', async () => {
    expect(await addSupplier()).toBe(SUPPLIERS);
    const text = await read(SUPPLIERS);
    expect(text).toContain('back within 28 days of arrival, unopened only, keeps 7.5 %, trip back EUR 5.20, credits in 30 days');
    expect((await test.db.supplier.findFirstOrThrow()).restockingPct.toString()).toBe('7.5');
  });

  it('is changed by one person at a time', async () => {
    await addSupplier();
    const { id } = await test.db.supplier.findFirstOrThrow();
    const edit = `${SUPPLIERS}/${id}/edit`;
    expect(await send(edit, { form: 'supplier', body: { ...supplier, returnDays: '14', version: '1' } })).toBe(SUPPLIERS);
    expect(await send(edit, { form: 'supplier', body: { ...supplier, returnDays: '7', version: '1' } })).toBe(edit);
    expect((await test.db.supplier.findFirstOrThrow()).returnDays).toBe(14);
  });

  it.each([
    ['without a name', { name: ' ' }, 'Type the supplier’s name, 120 letters at most.'],
    ['with odd days', { returnDays: 'ten' }, 'Give the days to send a piece back'],
    ['that keeps more than all', { restockingPct: '101' }, 'a percentage from 0 to 100'],
    ['with a negative carriage', { carriage: '-4' }, 'Give the amount in figures'],
    ['with another window', { windowStart: 'whenever' }, 'Choose when the return window starts.'],
  ])('%s is refused beside the field', async (_what, change, message) => {
    expect(await addSupplier(change)).toBe(`${SUPPLIERS}/new`);
    expect(await read(`${SUPPLIERS}/new`)).toContain(message);
    expect(await test.db.supplier.count()).toBe(0);
  });

  it('is on record once under its name', async () => {
    await addSupplier();
    expect(await addSupplier()).toBe(`${SUPPLIERS}/new`);
    expect(await read(`${SUPPLIERS}/new`)).toContain('Halfmoon Factors is on record already');
  });
});

describe('a variant', () => {
  beforeEach(() => addSupplier());

  it('is kept with what its list says, and measured figures count before listed ones', async () => {
    const page = await addVariant();
    expect(page).toMatch(/^\/parts-bench\/orders\/variants\/[0-9a-f-]{36}$/);
    const said = { feature: 'flangeDiameterMm', value: '53.9', provenance: 'measured' };
    expect(await send(`${page}?say=flangeDiameterMm`, { form: 'statement', to: `${page}/statements`, body: said })).toBe(page);
    const { text } = await desk.get(page).expect(200);
    expect(text).toMatch(/<b>53\.9 mm<\/b><small>measured<\/small>/);
    expect(text).toContain('52.0 mm, listed');
    const measured = await test.db.variantStatement.findFirstOrThrow({ where: { provenance: 'measured' } });
    await send(page, { form: 'tap', to: `${page}/statements/${measured.id}/withdraw`, body: {} });
    expect((await desk.get(page)).text).toMatch(/<b>52\.0 mm<\/b><small>listed<\/small>/);
    expect(await test.db.variantStatement.count({ where: { figure: '53.9' } })).toBe(1);
  });

  it.each([
    ['a flange of 5 mm', { value: ['', '5', ''] }, 'If 5 was in cm, type 50.'],
    ['a flange of 500 mm', { value: ['', '500', ''] }, 'makes no sense for a thermostat'],
    ['a seal of chewing gum', { value: ['chewing-gum', '', ''] }, 'Choose one, or'],
    ['a feature of another family', { feature: ['drive'], value: ['hub'] }, 'Choose one from the list.'],
    ['a negative price', { priceNet: '-1' }, 'Give the net price in figures'],
    ['months the wrong way round', { builtFrom: '2018-01' }, 'The last month comes before the first'],
    ['no such month', { builtTo: '2017-13' }, 'Give year and month'],
  ])('with %s is refused with nothing written', async (_what, change, message) => {
    const back = await addVariant(change);
    expect(back).toBe(`${VARIANTS}/new?family=thermostat`);
    expect(await read(back)).toContain(message);
    expect(await test.db.partVariant.count()).toBe(0);
  });

  it.each([
    ['first month', 2014, 2, 1],
    ['last month', 2017, 3, 1],
    ['month after', 2017, 4, 0],
    ['month before', 2014, 1, 0],
    ['year alone', 2017, null, 1],
    ['year after', 2018, null, 0],
    ['build not known', null, null, 1],
  ])('is listed for the engine by build: %s', async (_what, buildYear, buildMonth, listed) => {
    await addVariant();
    const { jobId, vehicleId } = await makeJob(test.db, { deskId: staff.desk });
    await test.db.vehicle.update({ where: { id: vehicleId }, data: { buildYear, buildMonth } });
    const { text } = await desk.get(`/parts-bench/orders/jobs/${jobId}/new`).expect(200);
    expect(text.includes('HM-T52')).toBe(listed === 1);
  });
});

describe('a box', () => {
  it('of unopened-only terms is opened only by who says so, at the bench', async () => {
    await addSupplier();
    await addVariant();
    const { id: variantId } = await test.db.partVariant.findFirstOrThrow();
    const { jobId } = await makeJob(test.db, { deskId: staff.desk });
    const order = `/parts-bench/orders/jobs/${jobId}/new`;
    await send(order, { form: 'order', body: { variants: variantId, expectedOn: '' } });
    const { id, code } = await test.db.partUnit.findFirstOrThrow();
    await send('/parts-bench/orders', { form: 'goods-in', to: '/parts-bench/orders/goods-in', body: { code: code.toLowerCase() } });
    expect((await desk.get('/parts-bench/orders')).text).toContain('Leave its box shut');
    const tech = await test.as('tech');
    const { text } = await tech.get(`/parts-bench/jobs/${jobId}`).expect(200);
    const open = async (sure: object) =>
      tech
        .post(`/returns-shelf/units/${id}/opened`)
        .type('form')
        .send({ ...formMarks(text), _key: randomUUID(), ...sure });
    await open({});
    expect((await test.db.partUnit.findFirstOrThrow()).isOpened).toBe(false);
    await open({ sure: 'on' });
    expect((await test.db.partUnit.findFirstOrThrow()).isOpened).toBe(true);
    await tech.get('/parts-bench/orders').expect(403);
    await tech.get('/returns-shelf').expect(403);
  });
});
