import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { textOfPdf } from '../support/pdf-text.ts';
import { openTestApp, SECRET, type TestApp } from '../support/test-app.ts';
import { DESK, openBrowser, TABLET, Walker, type WalkingBrowser } from '../support/walker.ts';
import { stockWorkshop } from '../support/workshop-rows.ts';

let test: TestApp;
let base: string;
let walking: WalkingBrowser;
beforeAll(async () => {
  test = await openTestApp();
  await test.furnish();
  await stockWorkshop(test.db);
  await test.app.listen(0, '127.0.0.1');
  base = await test.app.getUrl();
  walking = await openBrowser();
});
afterAll(async () => {
  await walking.close();
  await test.close();
});

const pictures = process.env['PICTURES'];
async function picture(walker: Walker, name: string): Promise<void> {
  if (pictures === undefined) return;
  mkdirSync(pictures, { recursive: true });
  writeFileSync(path.join(pictures, `${name}.png`), await walker.page.screenshot());
}

async function arrive(name: string, viewport: Parameters<typeof Walker.arrive>[2]): Promise<Walker> {
  const walker = await Walker.arrive(walking.browser, base, viewport);
  await walker.signIn(name, SECRET);
  return walker;
}

/** The technician's way of recording one step on the card. */
class Card {
  constructor(
    private readonly walker: Walker,
    private readonly jobId: string,
  ) {}

  async at(step: string): Promise<void> {
    await this.walker.open(`/bays/jobs/${this.jobId}/card?step=${step}`);
  }

  async done(...steps: string[]): Promise<void> {
    for (const step of steps) {
      await this.at(step);
      await this.walker.send('work');
    }
  }

  async typed(step: string, values: Record<string, string>, choices: Record<string, string> = {}): Promise<void> {
    await this.at(step);
    await this.walker.type('work', values);
    await this.walker.choose('work', choices);
    await this.walker.send('work');
  }

  async nothing(step: string): Promise<void> {
    await this.at(step);
    await this.walker.send('work', { name: 'none', value: '1' });
  }

  async closed(step: string): Promise<void> {
    await this.at(step);
    await this.walker.send('close');
  }

  async facts(): Promise<{ filledL: number }> {
    const card = await (await test.as('tech')).get(`/api/v1/job-cards/${this.jobId}`).expect(200);
    return (card.body as { facts: { filledL: number } }).facts;
  }

  async state(step: string): Promise<string> {
    const card = await (await test.as('tech')).get(`/api/v1/job-cards/${this.jobId}`).expect(200);
    return (card.body as { steps: { key: string; state: string }[] }).steps.find(({ key }) => key === step)?.state ?? 'missing';
  }
}

describe('a thermostat job, from the first call to the owner’s evening', () => {
  let jobPage = '';
  let jobId = '';

  it('is taken at the counter: customer, car, complaint, yes, place', async () => {
    const desk = await arrive('desk', DESK);
    await desk.open('/counter/customers/new');
    await desk.type('customer', { name: 'Odile Quill', phone: '0555 0142', address: '19 Lark Row', postcode: 'SM4 7AB', city: 'Saltmere' });
    await desk.send('customer');
    expect(await desk.text()).toContain('Odile Quill is on record.');
    await desk.follow('Add a vehicle');
    await desk.type('vehicle', { registration: 'tq 40 kes', make: 'Tamber', model: 'Orla 1.4', engineCode: 'TK14', built: '2017-03' });
    await desk.choose('vehicle', { thermostatKind: 'wax' });
    await desk.send('vehicle');
    await desk.follow('Take the complaint');
    await desk.type('complaint', { complaint: 'Gauge never comes up, heater lukewarm', complaintWhen: 'on the long road' });
    await desk.choose('complaint', { template: 'thermostat' });
    await desk.send('complaint');
    jobPage = desk.address();
    jobId = jobPage.split('/').at(-1) ?? '';
    await desk.follow('Record the yes');
    await desk.type('yes', { gross2: '480', ceiling: '520', saidDay: '2026-06-09', saidTime: '08:55' });
    await desk.tick('yes', 'yes1');
    await desk.send('yes');
    expect(await desk.text()).toContain('at most 520.00 EUR');
    await desk.choose('booking', { phase: 'opening' });
    await desk.type('booking', { day: '2026-06-09', from: '09:30', minutes: '120' });
    await desk.send('booking');
    expect(await desk.text()).toContain('9 Jun, 09:30 to 11:30');
    await desk.leave();
  });

  it('has every listed variant ordered and taken in, and the car’s key hung up', async () => {
    const desk = await arrive('desk', DESK);
    await desk.open(`/parts-bench/orders/jobs/${jobId}/new`);
    await desk.send('order');
    expect(await test.db.partUnit.count({ where: { place: 'expected' } })).toBe(3);
    for (let piece = 0; piece < 3; piece += 1) {
      const order = await test.db.purchaseOrder.findFirstOrThrow();
      await desk.open(`/parts-bench/orders/${order.id}`);
      await desk.send('tap');
    }
    expect(await test.db.partUnit.count({ where: { place: 'set-aside' } })).toBe(3);
    await desk.open(jobPage);
    await desk.type('arrival', { keyTag: '14', odometerKm: '86412' });
    await desk.send('arrival');
    await desk.open('/bays');
    expect(await desk.text()).toContain('Tamber Orla 1.4');
    await picture(desk, 'main-line-bays');
    await desk.leave();
  });

  it('is not opened hot: the hold point stays shut until a reading proves it cold', async () => {
    const tech = await arrive('tech', TABLET);
    const card = new Card(tech, jobId);
    await card.at('drained');
    expect(await tech.text()).toContain('is shut');
    await card.typed('measured-cold', { tempC: '47.5' }, { instrument: 'infrared', place: 'top-hose', signs: 'soft' });
    expect(await card.state('measured-cold')).not.toBe('passed');
    await card.typed('measured-cold', { tempC: '47.5' }, { instrument: 'contact-probe', place: 'top-hose', signs: 'soft' });
    expect(await card.state('measured-cold')).toBe('passed');
    await card.typed('level-on-arrival', { belowMarkMl: '400' }, { side: 'below' });
    await card.done('tray', 'cap-off');
    await card.typed('drained', { litres: '4.2' });
    await card.typed('kept', { litres: '0' });
    await card.done('housing-off', 'removed-part');
    await card.at('fitted');
    expect(await tech.text()).toContain('is shut');
    expect((await test.db.job.findFirstOrThrow()).stage).toBe('opened');
    await tech.leave();
  });

  it('has its variant settled by measuring the removed part', async () => {
    const tech = await arrive('tech', TABLET);
    const bench = `/parts-bench/jobs/${jobId}`;
    await tech.open(bench);
    expect(await tech.text()).toContain('Measure this next');
    await tech.open(`${bench}?read=flangeDiameterMm`);
    await tech.type('reading', { value: '5.4' });
    await tech.send('reading');
    expect(await tech.text()).toContain('makes no sense for a thermostat');
    await tech.open(`${bench}?read=flangeDiameterMm`);
    await tech.type('reading', { value: '54.02' });
    await tech.choose('reading', { instrument: 'vernier' });
    await tech.send('reading');
    await tech.open(`${bench}?read=seal`);
    await tech.type('unread', { why: 'perished, none left' });
    await tech.send('unread');
    await picture(tech, 'main-line-parts-bench');
    await tech.open(`${bench}?read=overallHeightMm`);
    await tech.type('reading', { value: '46.45' });
    await tech.choose('reading', { instrument: 'vernier' });
    await tech.send('reading');
    const right = await test.db.partVariant.findFirstOrThrow({ where: { partNumber: 'NR-5488' } });
    await tech.choose('choice', { variantId: right.id, basis: 'readings' });
    await tech.send('choice');
    expect(await new Card(tech, jobId).state('variant')).toBe('passed');
    await tech.leave();
  });

  it('is closed, filled by the recipe, run hot and proven', async () => {
    const tech = await arrive('tech', TABLET);
    const card = new Card(tech, jobId);
    await card.done('recess-clean', 'fitted');
    await card.at('first-fill');
    expect(await tech.text()).toContain('is shut');
    await card.at('torqued');
    await tech.type('work', { setAt: '10', document: 'TK14 manual', page: '19-4', tightened: '3', of: '3' });
    await tech.choose('work', { unit: 'Nm' });
    await tech.tick('work', 'inSequence');
    await tech.send('work');
    expect(await card.state('torqued')).toBe('passed');
    await card.done('hoses-on');
    await card.at('first-fill');
    await tech.type('capacity', { figure: '6.2', source: 'TK14 manual, page 19-1' });
    await tech.send('capacity');
    await card.at('first-fill');
    await tech.type('residual', { figure: '18', source: 'refractometer, before draining' });
    await tech.send('residual');
    await card.at('first-fill');
    expect(await tech.text()).toContain('Jug 1 of');
    for (let jugs = 0; jugs < 8 && (await tech.has('pour-next')); jugs += 1) {
      await tech.send('pour-next');
      await card.at('first-fill');
    }
    // What was drained and what was missing is the space; the jugs fill it to their marks, and a little more for the shrink.
    expect((await card.facts()).filledL).toBeGreaterThan(4.5);
    expect((await card.facts()).filledL).toBeLessThan(4.8);
    await card.closed('first-fill');
    await card.typed('bled', {}, { choice: 'open-cap' });
    await card.typed('held-cold', {}, { choice: 'pressure-held' });
    await card.typed('tools-counted', { of: '7', counted: '7' });
    await card.at('short-run');
    await tech.send('clock');
    await card.at('short-run');
    await tech.send('clock');
    await card.closed('topped-up');
    await card.done('run-hot');
    await card.typed('heater-hoses', {}, { choice: 'both-hot' });
    await card.typed('radiator-side', {}, { choice: 'cold-to-hot' });
    await card.typed('no-leak', {}, { choice: 'none' });
    await card.typed('fan', {}, { choice: 'seen' });
    await card.done('left-to-cool');
    await card.typed('strength', { value: '-27' }, { instrument: 'refractometer' });
    await card.typed('waste-booked', { litres: '4.2' });
    await card.done('access-on', 'bay-clean', 'keys-out');
    const job = await test.db.job.findFirstOrThrow({ include: { debts: { where: { endedAt: null } }, wasteEntries: true } });
    expect(job.stage).toBe('keys-out');
    expect(job.debts.map(({ kind }) => kind).sort()).toEqual(['after-log', 'customer-money', 'level-check', 'units-and-claims']);
    expect(job.wasteEntries.map(({ volumeL }) => volumeL.toNumber())).toEqual([4.2]);
    await tech.leave();
  });

  it('is invoiced, printed and paid at the desk', async () => {
    const desk = await arrive('desk', DESK);
    await desk.open(`/till/jobs/${jobId}`);
    expect(await desk.text()).toContain('NR-5488');
    await desk.send('issue');
    expect(await desk.text()).toContain('The invoice is issued.');
    const invoice = await test.db.invoice.findFirstOrThrow();
    const pdf = await (await test.as('desk')).get(`/api/v1/invoices/${invoice.id}/document.pdf`).responseType('blob').expect(200);
    const words = await textOfPdf(pdf.body as Buffer);
    for (const expected of [
      invoice.number,
      'Odile Quill',
      'TQ40KES',
      'NR-5488',
      invoice.payable.toFixed(2),
      invoice.vatTotal.toFixed(2),
      'Coolant level when cold',
    ]) {
      expect(words).toContain(expected);
    }
    await desk.send('payment');
    expect(await desk.text()).toContain('Paid in full');
    await desk.leave();
  });

  it('gets its cold level next morning, after the invoice', async () => {
    test.clock.set('2026-06-10T07:00:00Z');
    const tech = await arrive('tech', TABLET);
    await new Card(tech, jobId).typed('cold-level', { belowMarkMl: '40' }, { side: 'below' });
    const debts = await test.db.jobDebt.findMany({ where: { endedAt: null } });
    expect(debts.map(({ kind }) => kind).sort()).toEqual(['after-log', 'units-and-claims']);
    await tech.leave();
  });

  it('shows the owner its money and the units still to go back', async () => {
    const owner = await arrive('owner', DESK);
    await owner.open('/office');
    const office = await owner.text();
    const invoice = await test.db.invoice.findFirstOrThrow();
    expect(office).toContain(invoice.number);
    expect(office).toContain('Norrow Parts: 2 pieces');
    await owner.open('/returns-shelf');
    const shelf = await owner.text();
    expect(shelf).toContain('NR-5489');
    expect(shelf).toContain('NR-5252');
    expect(shelf).not.toContain('NR-5488');
    await picture(owner, 'main-line-returns-shelf');
    await owner.leave();
  });
});
