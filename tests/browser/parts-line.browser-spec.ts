import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { makeJob, sayYes } from '../support/factories.ts';
import { KilledServer } from '../support/killed-server.ts';
import { openTestApp, SECRET, type TestApp } from '../support/test-app.ts';
import { DESK, openBrowser, TABLET, Walker, type WalkingBrowser } from '../support/walker.ts';
import { stockWorkshop } from '../support/workshop-rows.ts';

let test: TestApp;
let server: KilledServer;
let walking: WalkingBrowser;
let jobId = '';
let desk: Walker;
let tech: Walker;
let owner: Walker;
const files = mkdtempSync(path.join(os.tmpdir(), 'runwarm-parts-'));
beforeAll(async () => {
  test = await openTestApp();
  const staff = await test.furnish();
  await stockWorkshop(test.db);
  ({ jobId } = await makeJob(test.db, { deskId: staff.desk }));
  await sayYes(test.db, { jobId, deskId: staff.desk });
  server = await KilledServer.on(test.connection);
  walking = await openBrowser();
  desk = await arrive('desk', DESK);
  tech = await arrive('tech', TABLET);
  owner = await arrive('owner', DESK);
});
afterAll(async () => {
  await walking.close();
  await server.kill();
  await test.close();
  rmSync(files, { recursive: true, force: true });
});

async function arrive(name: string, viewport: Parameters<typeof Walker.arrive>[2]): Promise<Walker> {
  const walker = await Walker.arrive(walking.browser, server.base, viewport);
  await walker.signIn(name, SECRET);
  return walker;
}

/** What must hold after every step, whatever was cut off: each unit in one place by its moves, its money the sum of its account. */
async function nothingIsLost(): Promise<void> {
  const units = await test.db.partUnit.findMany({ include: { moves: { orderBy: { id: 'asc' } }, money: true } });
  for (const { place, openNet, moves, money } of units) {
    expect(moves.at(-1)?.to ?? 'expected').toBe(place);
    expect(moves.every(({ from }, index) => from === (moves[index - 1]?.to ?? 'expected'))).toBe(true);
    const open = money.reduce(
      (sum, { kind, amountNet }) => sum + (kind === 'charged' ? 1 : -1) * Math.round(amountNet.toNumber() * 100),
      0,
    );
    expect(Math.round(openNet.toNumber() * 100)).toBe(open);
  }
  const matched = await test.db.lineMatch.findMany({ where: { state: 'laid', moneyId: { not: null } } });
  expect(await test.db.unitMoney.count({ where: { id: { in: matched.flatMap(({ moneyId }) => moneyId ?? []) } } })).toBe(matched.length);
}

const placesOf = async (): Promise<Record<string, string>> => {
  const units = await test.db.partUnit.findMany({ include: { variant: true }, orderBy: { variant: { partNumber: 'asc' } } });
  return Object.fromEntries(units.map(({ place, variant }) => [variant.partNumber, place]));
};
const unitOf = async (partNumber: string) => test.db.partUnit.findFirstOrThrow({ where: { variant: { partNumber } } });

/** A step of the way; then the server is killed and started again, and nothing is lost. */
function step(name: string, walk: () => Promise<void>): void {
  it(name, async () => {
    await walk();
    await server.killAndStart();
    await nothingIsLost();
  });
}

const card = async (key: string, values: Record<string, string> = {}, choices: Record<string, string> = {}): Promise<void> => {
  await tech.open(`/bays/jobs/${jobId}/card?step=${key}`);
  await tech.type('work', values);
  await tech.choose('work', choices);
  await tech.send('work');
};

describe('three variants, from one order to what their supplier owes', () => {
  step('are ordered, all that are listed', async () => {
    await desk.open(`/parts-bench/orders/jobs/${jobId}/new`);
    await desk.send('order');
    expect(await placesOf()).toEqual({ 'NR-5252': 'expected', 'NR-5488': 'expected', 'NR-5489': 'expected' });
  });

  const takeIn = async (partNumber: string): Promise<void> => {
    await desk.open('/parts-bench/orders');
    await desk.type('goods-in', { code: (await unitOf(partNumber)).code });
    await desk.send('goods-in');
  };
  for (const partNumber of ['NR-5252', 'NR-5488'])
    step(`come in: ${partNumber} by its code`, async () => {
      await takeIn(partNumber);
      expect((await placesOf())[partNumber]).toBe('set-aside');
    });

  it('come in once, though the server is killed while the form is on its way', async () => {
    const killed = new Promise((resolve) => setTimeout(resolve, 1_500)).then(() => server.kill());
    await Promise.all([takeIn('NR-5489').catch(() => undefined), killed]);
    await server.killAndStart();
    await nothingIsLost();
    // Whoever saw no answer looks again: it is in, or its form is sent once more.
    if ((await placesOf())['NR-5489'] === 'expected') await takeIn('NR-5489');
    expect((await placesOf())['NR-5489']).toBe('set-aside');
    expect(await test.db.unitMoney.count({ where: { kind: 'charged' } })).toBe(3);
  });

  step('wait while the car is stripped', async () => {
    await desk.open(`/counter/jobs/${jobId}`);
    await desk.type('arrival', { keyTag: '14', odometerKm: '86412' });
    await desk.send('arrival');
    await card('measured-cold', { tempC: '21' }, { instrument: 'contact-probe', place: 'top-hose', signs: 'soft' });
    await card('level-on-arrival', { belowMarkMl: '400' }, { side: 'below' });
    for (const key of ['tray', 'cap-off']) await card(key);
    await card('drained', { litres: '4.2' });
    await card('kept', { litres: '0' });
    for (const key of ['housing-off', 'removed-part']) await card(key);
  });

  step('are told apart by readings, one of which can’t be had', async () => {
    const bench = `/parts-bench/jobs/${jobId}`;
    await tech.open(`${bench}?read=openingTemperatureC`);
    await tech.type('reading', { value: '88' });
    await tech.choose('reading', { instrument: 'stamp' });
    await tech.send('reading');
    await tech.open(`${bench}?read=seal`);
    await tech.type('unread', { why: 'perished, none left' });
    await tech.send('unread');
    expect(await tech.text()).toContain('could not be read');
  });

  step('until the bench asks for the flange and the height, and one is left', async () => {
    const bench = `/parts-bench/jobs/${jobId}`;
    await tech.open(bench);
    const asked = async (): Promise<string> => (/Measure this next\s+([^\n]+)/i.exec(await tech.text())?.[1] ?? '').trim().toLowerCase();
    const readings: Record<string, [string, string]> = {
      'flange diameter': ['flangeDiameterMm', '54.02'],
      'overall height': ['overallHeightMm', '46.45'],
    };
    const seen: string[] = [];
    for (let name = await asked(); readings[name] !== undefined && !seen.includes(name); name = await asked()) {
      const [feature, value] = readings[name] ?? ['', ''];
      seen.push(name);
      await tech.open(`${bench}?read=${feature}`);
      await tech.type('reading', { value });
      await tech.choose('reading', { instrument: 'vernier' });
      await tech.send('reading');
    }
    expect(seen).toContain('flange diameter');
  });

  step('settled: one is fitted, the others stand aside', async () => {
    await tech.open(`/parts-bench/jobs/${jobId}`);
    await tech.choose('choice', { variantId: (await unitOf('NR-5488')).variantId, basis: 'readings' });
    await tech.send('choice');
    expect((await placesOf())['NR-5488']).toBe('fitted');
  });

  for (const partNumber of ['NR-5252', 'NR-5489'])
    step(`and go back: ${partNumber}`, async () => {
      await desk.open(`/returns-shelf/units/${(await unitOf(partNumber)).id}`);
      await desk.page.evaluate(`[...document.querySelectorAll('button')].find((b) => b.textContent.includes('not needed')).click()`);
      await desk.page.waitForNavigation({ waitUntil: 'load' });
      expect((await placesOf())[partNumber]).toBe('to-return');
    });

  step('on one return note, signed when they leave', async () => {
    const { supplierId } = await test.db.partVariant.findFirstOrThrow();
    await desk.open(`/returns-shelf/hand-over/${supplierId}`);
    await desk.type('hand-over', { evidence: 'driver Malk, slip 4417' });
    await desk.send('hand-over');
    expect(await placesOf()).toMatchObject({ 'NR-5252': 'handed-over', 'NR-5489': 'handed-over' });
  });

  step('of which one is credited short', async () => {
    await desk.open('/returns-shelf/documents/new/credit-note');
    await desk.type('paper', { number: 'CN-501', datedOn: new Date().toISOString().slice(0, 10), gross: '20.66' });
    for (const [field, value] of Object.entries({ 'part.0': 'NR-5252', 'reference.0': 'RN-0001', 'amount.0': '16.80' }))
      await (await desk.page.$(`[id="${field}"]`))?.type(value);
    await desk.send('paper');
    expect(await desk.text()).toContain('3.00 missing: 16.80 came, 19.80 was due.');
  });

  step('and the statement names it twice and the other not at all', async () => {
    const today = new Date().toISOString().slice(0, 10);
    const file = path.join(files, 'statement.csv');
    const rows = ['Date;Document no;Your ref;Details;Amount', `${today};CN-501;RN-0001;Credit note;-20,66`];
    writeFileSync(file, [...rows, `${today};CN-501;RN-0001;Credit note;-20,66`, `${today};INV-7;;Invoice;85,24`].join('\n'));
    await desk.open('/returns-shelf/documents/file');
    await desk.attach('file', 'file', file);
    await desk.choose('file', { kind: 'statement' });
    await desk.send('file');
    expect(await desk.text()).toContain('3 lines can be read');
    await desk.send('commit');
    expect(await desk.text()).toContain('is taken in');
  });

  it('and the owner sees exactly that', async () => {
    await owner.open('/returns-shelf/money');
    const rows = (await owner.page.evaluate(
      `[...document.querySelectorAll('#differences tbody tr')].map((row) => [row.cells[0].innerText.trim(), row.cells[4].innerText.trim()].join(' '))`,
    )) as string[];
    expect(rows.sort()).toEqual(['missing 32.10 with tax', 'short 3.00', 'twice 20.66 with tax']);
    expect((await owner.text()).replaceAll('\u00a0', ' ')).toContain('EUR 29.10 is at suppliers');
    await owner.follow('29.10');
    expect(await owner.text()).toContain('2 pieces, at suppliers.');
  });
});
