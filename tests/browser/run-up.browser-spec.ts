import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { CardUnderTest, newThermostatJob, proven, tap } from '../support/job-card.ts';
import { logFile } from '../support/log-files.ts';
import { textOfPdf } from '../support/pdf-text.ts';
import { openTestApp, SECRET, type TestApp } from '../support/test-app.ts';
import { openBrowser, TABLET, Walker, type WalkingBrowser } from '../support/walker.ts';

let test: TestApp;
let walking: WalkingBrowser;
let walker: Walker;
let jobId: string;
const files = mkdtempSync(path.join(tmpdir(), 'runwarm-logs-'));
beforeAll(async () => {
  test = await openTestApp();
  test.clock.set('2026-06-09T08:00:00Z');
  const { desk } = await test.furnish();
  jobId = await newThermostatJob(test, desk);
  await test.app.listen(0, '127.0.0.1');
  walking = await openBrowser();
  walker = await Walker.arrive(walking.browser, await test.app.getUrl(), TABLET);
  await walker.signIn('tech', SECRET);
});
afterAll(async () => {
  await walking.close();
  await test.close();
  rmSync(files, { recursive: true, force: true });
});

function file(name: string, text: string): string {
  const whole = path.join(files, name);
  writeFileSync(whole, text);
  return whole;
}

/** From the job's page to the page that shows what was understood, and back with the log kept. */
async function keepLog(log: string, { role, day }: { role: string; day: string }): Promise<void> {
  await walker.open(`/run-up/jobs/${jobId}`);
  await walker.choose('log', { thermostatKind: 'wax', role, heater: 'off' });
  await walker.type('log', { nominalOpeningC: '87', loggedOn: day });
  await walker.attach('log', 'file', log);
  await walker.send('log');
  expect(await walker.text()).toContain('Engine Coolant Temperature (°C)');
  await walker.send('draft', { name: 'then', value: 'keep' });
  expect(walker.address()).toBe(`/run-up/jobs/${jobId}`);
}

const proofSheet = async (): Promise<string> => {
  const tech = await test.as('tech');
  const href = String(await walker.page.evaluate(`document.querySelector('a[href$="/proof.pdf"]').getAttribute('href')`));
  const answer = await tech.get(href).expect(200).expect('content-type', 'application/pdf');
  return textOfPdf(answer.body as Buffer);
};

describe('a repair and its proof', () => {
  it('begins with a log that shows the fault', async () => {
    await keepLog(file('before.csv', logFile({ opensC: null, minutes: 30 })), { role: 'before', day: '2026-06-08' });
    expect(await walker.text()).toContain('Before: stuck open, quite sure');
    const sheet = await proofSheet();
    expect(sheet).toContain('The proof is still owed');
    expect(sheet).toContain('version 1');
  }, 60_000);

  it('ends with one that shows it cured: verdict and chart stand on the printed sheet', async () => {
    const card = new CardUnderTest(jobId, await test.as('tech'));
    await card.done(...proven(), tap('tick', 'keys-out'));
    await walker.open(`/bays/jobs/${jobId}/card?step=after-log`);
    await walker.follow('To the Run-up');
    expect(await walker.text()).toContain('Proof still owed by 23 Jun 2026');
    await keepLog(file('after.csv', logFile({ opensC: 87 })), { role: 'after', day: '2026-06-09' });
    const text = await walker.text();
    expect(text).toContain('Warms up as it should');
    expect(text).not.toContain('still owed by');
    const sheet = await proofSheet();
    for (const said of [
      'version 2',
      'Warms up as it should',
      // From the chart: both curves, the bend, the band.
      'Before, 8 Jun 2026',
      'After, 9 Jun 2026',
      '76 to 98 °C',
      'minutes from the start',
      // From the figures.
      'stuck open',
      'normal',
      'quite sure',
    ])
      expect(sheet).toContain(said);
    // The log knows no wax that lags behind: the estimate, which allows for it, lies a little lower.
    expect(sheet).toMatch(/thermostat opens, 8[67](\.5)? ± [12](\.5)? °C/);
    expect((await card.read()).debts.find(({ kind }) => kind === 'after-log')?.state).toBe('done');
  }, 60_000);

  it('draws before and after apart without colour, with the same as a table', async () => {
    await walker.open(`/run-up/jobs/${jobId}`);
    const parts = await walker.page.evaluate(
      `[...document.querySelectorAll('.warm-up-chart .middle [data-part]')].map((part) => part.getAttribute('data-part'))`,
    );
    expect(parts).toEqual(expect.arrayContaining(['band', 'speed', 'before', 'after', 'fit', 'knee']));
    const rows = Number(await walker.page.evaluate(`document.querySelectorAll('details.behind tbody tr').length`));
    expect(rows).toBeGreaterThan(20);
  });

  it('asks what a file does not say, and goes on from the answer', async () => {
    const bare = logFile({ opensC: 87 }).replace(' (°C)', '');
    await walker.open(`/run-up/jobs/${jobId}`);
    await walker.choose('log', { thermostatKind: 'wax', role: 'after' });
    await walker.attach('log', 'file', file('bare.csv', bare));
    await walker.send('log');
    expect(await walker.text()).toContain('In which unit is');
    await walker.choose('draft', { unitCoolant: '°C' });
    await walker.send('draft', { name: 'then', value: 'read' });
    await walker.send('draft', { name: 'then', value: 'keep' });
    expect(await walker.text()).toContain('The log is kept with the job and the car');
  }, 60_000);
});
