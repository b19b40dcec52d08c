import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { makeJob } from '../support/factories.ts';
import { openTestApp, SECRET, type StaffName, type TestApp } from '../support/test-app.ts';
import { DESK, openBrowser, Walker, type WalkingBrowser } from '../support/walker.ts';

let test: TestApp;
let base: string;
let walking: WalkingBrowser;
let staff: Record<StaffName, string>;
let walker: Walker;
beforeAll(async () => {
  test = await openTestApp();
  await test.app.listen(0, '127.0.0.1');
  base = await test.app.getUrl();
  walking = await openBrowser();
});
beforeEach(async () => {
  staff = await test.furnish();
  walker = await Walker.arrive(walking.browser, base, DESK);
});
afterEach(() => walker.leave());
afterAll(async () => {
  await walking.close();
  await test.close();
});

const STATUS = '[data-live="status"]';

/** Something of the page's element. */
const of = (selector: string, what: string): Promise<unknown> =>
  walker.page.evaluate(`document.querySelector(${JSON.stringify(selector)}).${what}`);

const statusOf = async (): Promise<string> => String(await of(STATUS, 'textContent'));

/** Types as a person does: into the field that is seen, over what stands there. */
async function typeInto(fields: Record<string, string>): Promise<void> {
  for (const [name, text] of Object.entries(fields)) {
    const field = await walker.page.$(`#${name}`);
    if (!field) throw new Error(`There is no field ${name}`);
    if (!(await field.isVisible())) throw new Error(`The field ${name} is not to be seen`);
    await of(`#${name}`, 'select()');
    await field.type(text);
  }
}

async function choose(lists: Record<string, string>): Promise<void> {
  for (const [name, value] of Object.entries(lists)) await walker.page.select(`#${name}`, value);
}

async function waitForStatus(start: string): Promise<string> {
  await walker.page.waitForFunction(`document.querySelector('${STATUS}')?.textContent.startsWith(${JSON.stringify(start)})`, {
    timeout: 10_000,
  });
  return statusOf();
}

async function fillSaturday(): Promise<void> {
  await choose({ product: 'mass', aim: 'freezing' });
  await typeInto({ holds: '7', missing: '1', out: '3', staysReading: '-18', content: '93', aimFreezes: '-30' });
}

const SATURDAY = 'Pour 2.35 L of product and 1.7 L of demineralised water.';

describe('the Saturday job at the bench', () => {
  it('is answered while it is typed, without the page being loaded again', async () => {
    await walker.signIn('tech', SECRET);
    await walker.open('/coolant-bench');
    await walker.page.evaluate('window.stillTheSamePage = true');
    await fillSaturday();
    expect(await waitForStatus(SATURDAY)).toContain('Holds from −30');
    expect(await walker.page.evaluate(`document.querySelectorAll('.pour svg').length`)).toBe(4); // two liquids, each for desk and phone
    await typeInto({ out: '33' });
    await waitForStatus('1.00 L missing and 33.00 L drained are more than the 7.00 L the system holds');
    expect(await of('#out-said', 'textContent')).toContain('are more than');
    expect(await of('#out', 'getAttribute("aria-invalid")')).toBe('true');
    await typeInto({ out: '3' });
    await waitForStatus(SATURDAY);
    expect(await of('#out', 'getAttribute("aria-invalid")')).toBeNull();
    expect(await walker.page.evaluate('window.stillTheSamePage')).toBe(true);
    expect(new URL(walker.page.url()).searchParams.get('staysReading')).toBe('-18');
  });

  it('keeps the cap that stood when another is mistyped', async () => {
    await walker.signIn('tech', SECRET);
    await walker.open('/coolant-bench');
    await fillSaturday();
    await waitForStatus(SATURDAY);
    await walker.page.evaluate('for (const fold of document.querySelectorAll(".bench-fold")) fold.open = true');
    await typeInto({ cap: '110' });
    const boils = await waitForStatus(`${SATURDAY} Holds from −30 to 12`);
    await typeInto({ cap: '1100' });
    await walker.page.waitForFunction('document.querySelector("#cap-said").textContent.includes("110 kPa stays in force")');
    expect(await statusOf()).toBe(boils);
  });

  it('is answered without script by the button', async () => {
    await walker.page.setJavaScriptEnabled(false);
    await walker.signIn('tech', SECRET);
    await walker.open('/coolant-bench');
    await fillSaturday();
    await Promise.all([
      walker.page.waitForNavigation({ waitUntil: 'load' }),
      walker.page.click('form[data-answers] button[type="submit"]'),
    ]);
    expect(await walker.text()).toContain('First 2.35 L of product.');
  });
});

describe('the flush at the bench', () => {
  it('is answered while it is typed', async () => {
    await walker.signIn('tech', SECRET);
    await walker.open('/coolant-bench/flush');
    await choose({ product: 'mass', aim: 'glycol' });
    await typeInto({ holds: '7', out: '4', present: '45', content: '93', aimGlycol: '40' });
    await waitForStatus('Flush 4 times, then pour 3 L of product and 1.05 L of demineralised water.');
    expect(await walker.text()).toContain('so more product goes in than the bottle’s table says');
  });
});

describe('units', () => {
  it('are chosen at the bench and hold on the next page', async () => {
    await walker.signIn('tech', SECRET);
    await walker.open('/coolant-bench?holds=7');
    await walker.choose('units', { temperature: 'F', volume: 'qt', pressure: 'psi' });
    await walker.send('units');
    expect(await walker.text()).toContain('Figures are shown and typed in these units from now on.');
    await walker.open('/coolant-bench/strength?freezes=-22&by=freezes');
    expect(await statusOf()).toBe('Safe to −22 °F.');
  });
});

describe('the slip for the bay', () => {
  it('is one page of PDF once the refill is reckoned', async () => {
    const { jobId } = await makeJob(test.db, { deskId: staff.desk, template: 'coolant-change' });
    await walker.signIn('tech', SECRET);
    await walker.open(`/coolant-bench/jobs/${jobId}?holds=7`);
    const slip = `/coolant-bench/jobs/${jobId}/slip.pdf`;
    const ask = (query: string): Promise<unknown> =>
      walker.page.evaluate(
        `fetch(${JSON.stringify(slip + query)}).then(async (r) => ({ status: r.status, type: r.headers.get('content-type'), text: (await r.text()) }))`,
      );
    expect(await ask('')).toMatchObject({ status: 422, text: expect.stringContaining('open the bench for this job') as unknown as string });
    const printed = (await ask('?holds=7')) as { status: number; type: string; text: string };
    expect(printed).toMatchObject({ status: 200, type: 'application/pdf' });
    expect(printed.text.startsWith('%PDF-')).toBe(true);
    expect(printed.text.match(/\/Type \/Page\b/g)).toHaveLength(1);
  });
});
