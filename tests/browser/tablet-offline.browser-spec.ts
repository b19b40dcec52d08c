import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { makeJob } from '../support/factories.ts';
import { givePins, type StaffIds } from '../support/tablet.ts';
import { BrowserTablet } from '../support/tablet-browser.ts';
import { openTestApp, type TestApp } from '../support/test-app.ts';
import { openBrowser, type WalkingBrowser } from '../support/walker.ts';
import { stockWorkshop } from '../support/workshop-rows.ts';

let test: TestApp;
let base: string;
let walking: WalkingBrowser;
let staff: StaffIds;
let jobId: string;
let number = 0;
beforeAll(async () => {
  [test, walking] = await Promise.all([openTestApp(), openBrowser()]);
  await test.app.listen(0, '127.0.0.1');
  base = (await test.app.getUrl()).replace('127.0.0.1', 'localhost');
});
beforeEach(async () => {
  test.clock.set(new Date().toISOString()); // the browser's clock is the machine's
  staff = await test.furnish();
  await givePins(test);
  await stockWorkshop(test.db);
  ({ jobId } = await makeJob(test.db, { deskId: staff.desk }));
  await test.db.job.update({ where: { id: jobId }, data: { stage: 'spoken-of' } });
  await test.db.jobStageChange.create({ data: { jobId, from: 'spoken-of', to: 'expected', at: test.clock.now() } });
  await test.db.jobStageChange.create({ data: { jobId, from: 'expected', to: 'standing', at: test.clock.now() } });
});
afterAll(async () => {
  await walking.close();
  await test.close();
});

const card = (): string => `/bays/jobs/${jobId}/card`;

async function tabletAtWork(): Promise<BrowserTablet> {
  number += 1;
  const tablet = await BrowserTablet.enrol(walking.browser, { test, base, name: `Bay ${number}` });
  await tablet.signIn(staff.tech, card());
  return tablet;
}

const steps = async (): Promise<string[]> =>
  (await test.db.jobAction.findMany({ orderBy: { seq: 'asc' } })).map(({ kind, step }) => `${kind} ${step ?? ''}`);

describe('a tablet whose network has gone', () => {
  it('goes on through a reload, says what waits, and sends it once in order', async () => {
    const tablet = await tabletAtWork();
    await tablet.worker();
    await tablet.open(card());
    expect(await tablet.line()).toContain('All saved');
    const cut = await tablet.cut();
    await tablet.at('odometer');
    await tablet.fill('work', { value: '86412' });
    await tablet.press('work');
    await tablet.lineSays('1 waiting');
    await tablet.at('measured-cold');
    await tablet.fill('work', { tempC: '22', instrument: 'contact-probe', place: 'top-hose', signs: 'soft' });
    await tablet.press('work');
    await tablet.lineSays('2 waiting');
    expect(await steps()).toEqual([]);
    await tablet.page.reload();
    await tablet.ready();
    await tablet.lineSays('2 waiting');
    expect(await tablet.text()).toMatch(/86\D?412 km/);
    await tablet.page.goto(`${base}/bays`);
    await tablet.ready();
    expect(await tablet.text()).toContain('Cars on this tablet');
    await cut.mend();
    await tablet.open(card());
    await tablet.lineSays('All saved');
    expect(await steps()).toEqual(['record odometer', 'record measured-cold']);
    await tablet.close();
  });
});
