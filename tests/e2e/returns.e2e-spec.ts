import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { SetAsideRelease } from '../../apps/server/src/features/returns/set-aside-release.service.ts';
import { page, post } from '../support/as-a-browser.ts';
import { makeJob } from '../support/factories.ts';
import { CardUnderTest, proven } from '../support/job-card.ts';
import { type Agent, formMarks, openTestApp, type StaffName, type TestApp } from '../support/test-app.ts';
import { stockWorkshop } from '../support/workshop-rows.ts';

const NOW = '2026-06-09T08:00:00Z';
const ALL = ['NR-5252', 'NR-5488', 'NR-5489'];

let test: TestApp;
let staff: Record<StaffName, string>;
let desk: Agent;
let owner: Agent;
let jobId: string;
beforeAll(async () => {
  test = await openTestApp();
});
beforeEach(async () => {
  test.clock.set(NOW);
  staff = await test.furnish();
  await stockWorkshop(test.db);
  ({ jobId } = await makeJob(test.db, { deskId: staff.desk }));
  desk = await test.as('desk');
  owner = await test.as('owner');
});
afterAll(() => test.close());

const unitOf = async (partNumber: string) => test.db.partUnit.findFirstOrThrow({ where: { variant: { partNumber } } });
const placesOf = async (): Promise<Record<string, string>> => {
  const units = await test.db.partUnit.findMany({ include: { variant: true }, orderBy: { variant: { partNumber: 'asc' } } });
  return Object.fromEntries(units.map(({ place, variant }) => [variant.partNumber, place]));
};
const unitPage = async (partNumber: string): Promise<string> => `/returns-shelf/units/${(await unitOf(partNumber)).id}`;

async function order(partNumbers: readonly string[] = ALL): Promise<void> {
  const variants = await test.db.partVariant.findMany({ where: { partNumber: { in: [...partNumbers] } }, select: { id: true } });
  const on = `/parts-bench/orders/jobs/${jobId}/new`;
  const to = await post(desk, on, { on, form: 'order', body: { variants: variants.map(({ id }) => id), expectedOn: '' } });
  expect(to).toBe(`/parts-bench/jobs/${jobId}`);
}

const takeIn = async (partNumber: string): Promise<string> =>
  post(desk, '/parts-bench/orders/goods-in', {
    on: '/parts-bench/orders',
    form: 'goods-in',
    body: { code: (await unitOf(partNumber)).code },
  });

async function orderAndTakeIn(): Promise<void> {
  await order();
  for (const partNumber of ALL) await takeIn(partNumber);
}

async function choose(partNumber: string): Promise<void> {
  const { id: variantId } = await test.db.partVariant.findFirstOrThrow({ where: { partNumber } });
  const choice = {
    jobId,
    variantId,
    engineCode: 'TK14',
    probability: '0.99',
    evidence: {},
    chosenById: staff.tech,
    chosenAt: test.clock.now(),
  };
  await test.db.fitmentChoice.create({ data: choice });
}

const act = async (
  agent: Agent,
  partNumber: string,
  { what, body = {} }: { what: string; body?: Record<string, string> },
): Promise<string> => {
  const on = await unitPage(partNumber);
  return post(agent, `${on}/${what}`, { on, form: what === 'money' ? 'money' : 'act', body });
};

async function sendAll(): Promise<void> {
  await orderAndTakeIn();
  for (const partNumber of ALL) {
    await act(desk, partNumber, { what: 'return', body: { reason: 'not-needed' } });
    await act(desk, partNumber, { what: 'hand-over', body: { evidence: 'driver Malk, slip 4417' } });
  }
}

describe('the way of three variants', () => {
  it('leads from one order to two credits, and the job owes nothing for its units', async () => {
    const form = await page(desk, `/parts-bench/orders/jobs/${jobId}/new`);
    expect(form).toContain('3 variants are listed for TK14.');
    expect(form).toContain('Order all 3');
    await order();
    expect(await placesOf()).toEqual({ 'NR-5252': 'expected', 'NR-5488': 'expected', 'NR-5489': 'expected' });
    const wait = () => test.db.jobWait.findFirstOrThrow({ where: { jobId, kind: 'part' } });
    expect(await wait()).toMatchObject({ words: 'On order', whoActs: 'Norrow Parts', endedAt: null });
    await takeIn('NR-5252');
    await takeIn('NR-5488');
    expect((await wait()).endedAt).toBeNull();
    await takeIn('NR-5489');
    expect((await wait()).endedAt).not.toBeNull();
    const arrived = await unitOf('NR-5488');
    expect(arrived).toMatchObject({ place: 'set-aside', arrivedAt: new Date(NOW), returnBy: new Date('2026-07-09T00:00:00Z') });
    const charged = await test.db.unitMoney.findFirstOrThrow({ where: { unitId: arrived.id } });
    expect([charged.kind, charged.amountNet.toFixed(2), charged.reference]).toEqual(['charged', '23.40', 'order 1']);

    const tech = await test.as('tech');
    const bench = `/parts-bench/jobs/${jobId}`;
    const read = async (body: Record<string, string>) => post(tech, `${bench}/readings`, { on: bench, form: 'reading', body });
    await read({ feature: 'openingTemperatureC', place: 'removed-part', value: '88', instrument: 'stamp' });
    await read({ feature: 'seal', place: 'removed-part', couldNotRead: 'on', why: 'perished, none left' });
    await read({ feature: 'flangeDiameterMm', place: 'removed-part', value: '54,02', instrument: 'vernier' });
    // Only the height still parts the two that are left (46.5 and 49.0 mm): the bench asks for it.
    expect((await page(tech, bench)).toLowerCase()).toContain('measure this next overall height');
    await read({ feature: 'overallHeightMm', place: 'removed-part', value: '46.45', instrument: 'vernier' });
    await post(tech, `${bench}/choice`, { on: bench, form: 'choice', body: { variantId: arrived.variantId, basis: 'readings' } });
    expect(await placesOf()).toEqual({ 'NR-5252': 'set-aside', 'NR-5488': 'fitted', 'NR-5489': 'set-aside' });
    const card = new CardUnderTest(jobId, tech);
    expect(await card.hold('variant-settled')).toBe('passed');
    await card.done(...proven().filter(({ step }) => step !== 'variant'));
    expect(await card.hold('proof')).toBe('passed');
    expect(await placesOf()).toEqual({ 'NR-5252': 'to-return', 'NR-5488': 'fitted', 'NR-5489': 'to-return' });
    const shelf = await page(desk, '/returns-shelf');
    expect(shelf).toContain('Pack the 2 for Norrow Parts');
    expect(shelf).toContain('The account closes. 3 units = 1 fitted + 2 to return.');

    const { supplierId } = await test.db.partVariant.findFirstOrThrow({ where: { partNumber: 'NR-5252' } });
    const handOver = `/returns-shelf/hand-over/${supplierId}`;
    const units = [(await unitOf('NR-5252')).id, (await unitOf('NR-5489')).id];
    expect(await post(desk, handOver, { on: handOver, form: 'hand-over', body: { units, evidence: '' } })).toBe(handOver);
    expect(await page(desk, handOver)).toContain('Give who signed for it, or the tracking number.');
    expect(await post(desk, handOver, { on: handOver, form: 'hand-over', body: { units, evidence: 'driver Malk, slip 4417' } })).toBe(
      '/returns-shelf',
    );
    expect(await page(desk, '/returns-shelf')).toContain('EUR 45.90 is at suppliers, none of it late.');

    for (const [partNumber, amount] of [
      ['NR-5252', '19,80'],
      ['NR-5489', '26.10'],
    ] as const) {
      await act(desk, partNumber, { what: 'money', body: { kind: 'credited', amount, reference: 'credit note 20558' } });
    }
    expect(await placesOf()).toEqual({ 'NR-5252': 'gone-for-good', 'NR-5488': 'fitted', 'NR-5489': 'gone-for-good' });
    expect(await page(desk, '/returns-shelf')).toContain('EUR 45.90 came back');
  });

  it('fits one piece only, though the choice is changed', async () => {
    await orderAndTakeIn();
    const tech = await test.as('tech');
    const on = `/parts-bench/jobs/${jobId}`;
    for (const partNumber of ['NR-5488', 'NR-5252', 'NR-5252']) {
      const { variantId } = await unitOf(partNumber);
      await post(tech, `${on}/choice`, { on, form: 'choice', body: { variantId, basis: 'readings' } });
      const fitted = Object.entries(await placesOf()).filter(([, place]) => place === 'fitted');
      expect(fitted).toEqual([[partNumber, 'fitted']]);
    }
    expect((await unitOf('NR-5488')).place).toBe('set-aside');
  });

  it('keeps the debt of a gone car until each piece has ended', async () => {
    await sendAll();
    const stages = ['spoken-of', 'expected', 'standing', 'keys-out'];
    for (const [index, to] of stages.slice(1).entries())
      await test.db.jobStageChange.create({ data: { jobId, from: stages[index] ?? '', to, at: new Date(NOW) } });
    const debt = async () => test.db.jobDebt.findFirst({ where: { jobId, kind: 'units-and-claims' } });
    await act(desk, 'NR-5252', { what: 'money', body: { kind: 'credited', amount: '19.80', reference: 'credit note 1' } });
    expect(await debt()).toMatchObject({ endedAt: null });
    await act(desk, 'NR-5488', { what: 'money', body: { kind: 'credited', amount: '23.40', reference: 'credit note 1' } });
    await act(desk, 'NR-5489', { what: 'money', body: { kind: 'carrier-paid', amount: '26.10', reference: 'letter 7' } });
    expect(await debt()).toMatchObject({ ending: 'done' });
    await act(desk, 'NR-5489', { what: 'money', body: { kind: 'credited', amount: '1.00', reference: 'credit note 2' } });
    expect(await test.db.jobDebt.count({ where: { jobId, kind: 'units-and-claims', endedAt: null } })).toBe(1);
  });
});

describe('money of a unit', () => {
  it('of terms that keep a tenth closes with the credit that they promise', async () => {
    await test.db.supplier.updateMany({ data: { restockingPct: '10' } });
    await sendAll();
    await act(desk, 'NR-5489', { what: 'money', body: { kind: 'credited', amount: '23.49', reference: 'credit note 9' } });
    expect((await unitOf('NR-5489')).place).toBe('gone-for-good');
    const lost = await test.db.unitMoney.findFirstOrThrow({ where: { kind: 'loss-accepted' } });
    expect([lost.amountNet.toFixed(2), lost.why]).toEqual(['2.61', 'Restocking within the terms']);
  });

  it('stays open after a short credit until the owner gives it up', async () => {
    await sendAll();
    await act(desk, 'NR-5489', { what: 'money', body: { kind: 'credited', amount: '20', reference: 'credit note 9' } });
    expect((await unitOf('NR-5489')).place).toBe('handed-over');
    await act(desk, 'NR-5489', { what: 'gone' });
    expect(await page(desk, await unitPage('NR-5489'))).toContain('6.10 is still open');
    expect((await unitOf('NR-5489')).place).toBe('handed-over');
    const on = await unitPage('NR-5489');
    const { text } = await desk.get(on);
    await desk
      .post(`${on}/loss`)
      .type('form')
      .send({ ...formMarks(text), why: 'small' })
      .expect(403);
    await act(owner, 'NR-5489', { what: 'loss', body: { why: 'Not worth the calls' } });
    expect((await unitOf('NR-5489')).place).toBe('gone-for-good');
  });

  it('that comes a second time is taken in and shown as owed by us', async () => {
    await sendAll();
    const credit = { kind: 'credited', amount: '26.10', reference: 'credit note 9' };
    await act(desk, 'NR-5489', { what: 'money', body: credit });
    await act(desk, 'NR-5489', { what: 'money', body: { ...credit, reference: 'credit note 11' } });
    const shelf = await page(desk, '/returns-shelf');
    expect(shelf).toContain('credited more than was charged');
    const second = await test.db.unitMoney.findFirstOrThrow({ where: { reference: 'credit note 11' } });
    await act(desk, 'NR-5489', { what: `money/${second.id}/take-back` });
    await act(desk, 'NR-5489', { what: `money/${second.id}/take-back` });
    expect(await test.db.unitMoney.count({ where: { kind: 'credited', unitId: second.unitId } })).toBe(3);
    expect(await page(desk, '/returns-shelf')).not.toContain('credited more than was charged');
  });

  it('open keeps the database itself from ending a unit', async () => {
    await sendAll();
    const { id } = await unitOf('NR-5489');
    const move = { unitId: id, from: 'handed-over', to: 'gone-for-good', at: new Date(NOW) };
    await expect(test.db.unitMove.create({ data: move })).rejects.toThrow(/26.10 is still open/);
    await expect(test.db.partUnit.update({ where: { id }, data: { place: 'stocked' } })).rejects.toThrow(/only by a move/);
  });
});

describe('a unit', () => {
  it('goes to one place when two people send it to two at once', async () => {
    await orderAndTakeIn();
    const on = await unitPage('NR-5252');
    const { text } = await desk.get(on);
    const { text: ownersText } = await owner.get(on);
    const answers = await Promise.all([
      desk.post(`${on}/stock`).type('form').send(formMarks(text)),
      owner
        .post(`${on}/return`)
        .type('form')
        .send({ ...formMarks(ownersText), reason: 'damaged' }),
    ]);
    expect(answers.map(({ status }) => status)).toEqual([303, 303]);
    const { id, place } = await unitOf('NR-5252');
    const moves = await test.db.unitMove.findMany({ where: { unitId: id }, orderBy: { id: 'asc' } });
    // From stock it may go back, too: then both have happened, one after the other.
    expect(moves.at(-1)?.to).toBe(place);
    for (const [index, move] of moves.slice(1).entries()) expect(move.from).toBe(moves[index]?.to);
  });

  it('is handed over once by two who do it at once', async () => {
    await orderAndTakeIn();
    await act(desk, 'NR-5252', { what: 'return', body: { reason: 'not-needed' } });
    const on = await unitPage('NR-5252');
    const [{ text }, { text: ownersText }] = await Promise.all([desk.get(on), owner.get(on)]);
    await Promise.all([
      desk
        .post(`${on}/hand-over`)
        .type('form')
        .send({ ...formMarks(text), evidence: 'slip 1' }),
      owner
        .post(`${on}/hand-over`)
        .type('form')
        .send({ ...formMarks(ownersText), evidence: 'slip 2' }),
    ]);
    expect(await test.db.unitMove.count({ where: { to: 'handed-over' } })).toBe(1);
  });

  it('comes in once by a form sent twice, and its code twice is told', async () => {
    await order();
    const { code } = await unitOf('NR-5252');
    const { text } = await desk.get('/parts-bench/orders').expect(200);
    const body = { ...formMarks(text, 'goods-in'), code };
    await Promise.all([1, 2].map(() => desk.post('/parts-bench/orders/goods-in').type('form').send(body).expect(303)));
    expect(await test.db.unitMoney.count()).toBe(1);
    expect(await takeIn('NR-5252')).toBe('/parts-bench/orders');
    expect(await test.db.unitMove.count()).toBe(1);
  });

  it('of unopened-only terms is not sent back once its box is open, and kept as stock', async () => {
    await test.db.supplier.updateMany({ data: { unopenedOnly: true } });
    await orderAndTakeIn();
    const { id } = await unitOf('NR-5252');
    expect(await page(desk, `/returns-shelf/units/${id}`)).toContain('Norrow Parts takes back unopened boxes only.');
    await test.db.partUnit.update({ where: { id }, data: { isOpened: true } });
    await act(desk, 'NR-5252', { what: 'return', body: { reason: 'not-needed' } });
    expect((await unitOf('NR-5252')).place).toBe('set-aside');
    await act(desk, 'NR-5252', { what: 'stock' });
    expect((await unitOf('NR-5252')).place).toBe('stocked');
  });

  it('that nobody needs goes back by itself when its last day comes near', async () => {
    await orderAndTakeIn();
    await choose('NR-5488');
    const rounds = test.app.get(SetAsideRelease);
    test.clock.set('2026-07-03T08:00:00Z');
    await rounds.releaseAll();
    expect(await placesOf()).toEqual({ 'NR-5252': 'set-aside', 'NR-5488': 'set-aside', 'NR-5489': 'set-aside' });
    test.clock.set('2026-07-04T08:00:00Z');
    await rounds.releaseAll();
    expect(await placesOf()).toEqual({ 'NR-5252': 'to-return', 'NR-5488': 'set-aside', 'NR-5489': 'to-return' });
  });

  it('that comes after the proof goes back with its arrival', async () => {
    await order();
    await choose('NR-5488');
    await takeIn('NR-5488');
    await new CardUnderTest(jobId, await test.as('tech')).done(...proven());
    expect((await placesOf())['NR-5252']).toBe('expected');
    await takeIn('NR-5252');
    expect((await placesOf())['NR-5252']).toBe('to-return');
  });

  it('that a person set aside again stays there', async () => {
    await orderAndTakeIn();
    await choose('NR-5488');
    await new CardUnderTest(jobId, await test.as('tech')).done(...proven());
    expect((await placesOf())['NR-5252']).toBe('to-return');
    await act(desk, 'NR-5252', { what: 'aside', body: { why: 'Wanted for the next car' } });
    await page(desk, '/returns-shelf');
    await test.app.get(SetAsideRelease).releaseAll();
    expect((await placesOf())['NR-5252']).toBe('set-aside');
  });

  it('kept as stock is taken for the next car by one of two, and costs that job', async () => {
    await orderAndTakeIn();
    await act(desk, 'NR-5252', { what: 'stock' });
    await test.db.job.update({ where: { id: jobId }, data: { keyTag: 9 } });
    const { jobId: next } = await makeJob(test.db, { deskId: staff.desk, registration: 'SB22LKM' });
    const on = `/parts-bench/orders/jobs/${next}/new`;
    expect(await page(desk, on)).toContain('In stock already');
    const { id } = await unitOf('NR-5252');
    await Promise.all([desk, owner].map((agent) => post(agent, `/parts-bench/orders/jobs/${next}/stock/${id}`, { on, form: 'tap' })));
    expect(await unitOf('NR-5252')).toMatchObject({ place: 'set-aside', jobId: next });
    expect(await test.db.unitMove.count({ where: { from: 'stocked' } })).toBe(1);
  });

  it('that came wrong stands beside the order, which stays as it was', async () => {
    await order();
    const { id: orderId } = await test.db.purchaseOrder.findFirstOrThrow();
    const { id: variantId } = await test.db.partVariant.findFirstOrThrow({ where: { partNumber: 'NR-5489' } });
    const on = `/parts-bench/orders/${orderId}`;
    await post(desk, `${on}/beside`, { on, form: 'beside', body: { variantId, reason: 'wrong' } });
    expect(await test.db.partUnit.count({ where: { place: 'expected' } })).toBe(3);
    expect(await test.db.partUnit.findFirstOrThrow({ where: { arrivalReason: 'wrong' } })).toMatchObject({
      place: 'set-aside',
      orderLineId: null,
    });
  });
});

describe('garbage', () => {
  const forms = ['return', 'stock', 'aside', 'hand-over', 'sold', 'gone', 'taken-out', 'money', 'money/x/take-back', 'money/1e9/take-back'];
  it.each(forms)('sent to %s never falls over', async (what) => {
    await orderAndTakeIn();
    const on = await unitPage('NR-5252');
    for (const junk of [
      {},
      { amount: '-5', kind: 'gift' },
      { amount: '0', kind: 'credited', reference: '\0' },
      { reason: ['a', 'b'], why: '\0', evidence: ' ' },
    ]) {
      const { text } = await owner.get(on).expect(200);
      const answer = await owner
        .post(`${on}/${what}`)
        .type('form')
        .send({ ...formMarks(text), ...junk });
      expect(answer.status).toBeLessThan(500);
    }
  });

  it.each([
    ['code', ''],
    ['code', '\0'],
    ['code', 'ZZZ-ZZZ'],
    ['code', "'; drop table part_unit;--"],
  ])('typed as a %s is told: %j', async (field, typed) => {
    expect(
      await post(desk, '/parts-bench/orders/goods-in', { on: '/parts-bench/orders', form: 'goods-in', body: { [field]: typed } }),
    ).toBe('/parts-bench/orders');
    expect(await post(desk, '/returns-shelf/units', { on: '/returns-shelf', form: 'find', body: { [field]: typed } })).toBe(
      '/returns-shelf',
    );
  });

  it('as an order is refused with nothing written', async () => {
    const on = `/parts-bench/orders/jobs/${jobId}/new`;
    for (const variants of [[], 'x', [jobId], ['x', jobId]])
      expect(await post(desk, on, { on, form: 'order', body: { variants, expectedOn: '2026-02-31' } })).toBe(on);
    expect(await test.db.purchaseOrder.count()).toBe(0);
  });
});
