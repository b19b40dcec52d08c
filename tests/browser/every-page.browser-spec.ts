import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Page } from 'puppeteer';
import { accessFaults, collectFaults, openContext, overflowPx, sessionCookie, transferredBytes } from '../support/browser.ts';
import { type DemoApp, openDemo } from '../support/demo.ts';
import { formsOf } from '../support/page-forms.ts';
import { type DeclaredRoute, declaredRoutes } from '../support/routes.ts';
import type { StaffName } from '../support/test-app.ts';
import { DESK, openBrowser, TABLET, type WalkingBrowser } from '../support/walker.ts';
import { type SeenPage, walkPages } from '../support/walk-pages.ts';

const ROOMS = ['/office', '/counter', '/bays', '/parts-bench', '/parts-bench/orders', '/coolant-bench', '/returns-shelf', '/till'];
const HOME = { desk: '/counter', tech: '/bays', owner: '/office' } as const;
// Without touch: changing that reloads the page, and a refused form says its errors once.
const SCREENS = [DESK, { width: TABLET.width, height: TABLET.height }];
const AT_ONCE = 3;
const MOST_BYTES = 100_000;

let test: DemoApp;
let routes: DeclaredRoute[];
let walking: WalkingBrowser;
beforeAll(async () => {
  [test, walking] = await Promise.all([openDemo(), openBrowser()]);
  routes = declaredRoutes(test.app);
}, 120_000);
afterAll(async () => {
  await walking.close();
  await test.close();
});

const ask = (address: string, cookie: string, init: RequestInit = {}): Promise<Response> =>
  fetch(test.base + address, { ...init, redirect: 'manual', headers: { cookie } });

/** What can be reached from the rooms by links, so many of a kind, beside those that this person's home doesn't lead to. */
function reach(cookie: string, { start, most }: { start: readonly string[]; most: number }): Promise<SeenPage[]> {
  const get = async (address: string): Promise<{ status: number; html: string }> => {
    const answer = await ask(address, cookie);
    return { status: answer.status, html: await answer.text() };
  };
  return walkPages(start, { routes, most, get });
}

/** Everything that is wrong with one page at both sizes; the document's status must be the one named. */
async function faultsOf(page: Page, faults: string[], { address, status = 200 }: { address: string; status?: number }): Promise<string[]> {
  faults.length = 0;
  const answer = await page.goto(test.base + address, { waitUntil: 'load' });
  if (answer?.status() !== status) faults.push(`answered ${answer?.status() ?? 0}`);
  if (!/\S.* · /.test(await page.title())) faults.push(`is called “${await page.title()}”`);
  for (const screen of SCREENS) {
    await page.setViewport(screen);
    const over = await overflowPx(page);
    const size = `${screen.width}×${screen.height}`;
    if (over > 0) faults.push(`at ${size} is ${over} px too wide`);
    faults.push(...(await accessFaults(page, screen === DESK ? 'all' : 'ofWidth')).map((fault) => `at ${size}: ${fault}`));
  }
  return faults.map((fault) => `${address} ${fault}`);
}

/** Looks at all of them, some at once, each with a page of its own. */
async function lookAt(cookie: string | undefined, visits: readonly { address: string; status?: number }[]): Promise<string[]> {
  const context = await openContext(walking.browser, test.base, cookie);
  const queue = [...visits];
  const found: string[] = [];
  const look = async (): Promise<void> => {
    const page = await context.newPage();
    const faults = collectFaults(page, test.base);
    for (let visit = queue.shift(); visit; visit = queue.shift()) found.push(...(await faultsOf(page, faults, visit)));
  };
  await Promise.all(Array.from({ length: AT_ONCE }, look));
  await context.close();
  return found.sort();
}

describe('every page', () => {
  it.each([
    ['owner', 2, 45],
    ['desk', 1, 30],
    ['tech', 1, 8],
  ] as const)(
    'that %s can reach passes at both sizes',
    async (name, most, atLeast) => {
      const cookie = await sessionCookie(test.base, name);
      const jobs = name === 'tech' ? await test.db.job.findMany({ distinct: ['stage'], select: { id: true } }) : [];
      const pages = await reach(cookie, { start: [HOME[name], ...jobs.map(({ id }) => `/bays/jobs/${id}/card`)], most });
      const shown = pages.filter(({ status }) => status === 200);
      expect(pages.filter(({ status }) => status !== 200 && status !== 303).map(({ address, status }) => `${address} ${status}`)).toEqual(
        [],
      );
      expect(shown.length).toBeGreaterThanOrEqual(atLeast);
      expect(await lookAt(cookie, shown)).toEqual([]);
    },
    240_000,
  );

  it('before anybody has signed in, and where nothing is, passes too', async () => {
    expect(await lookAt(undefined, [{ address: '/sign-in' }, { address: '/nothing', status: 404 }])).toEqual([]);
    const cookie = await sessionCookie(test.base, 'tech');
    const visits = [
      { address: '/nothing', status: 404 },
      { address: '/office', status: 403 },
      { address: `/bays/jobs/${randomUUID()}/card`, status: 404 },
    ];
    expect(await lookAt(cookie, visits)).toEqual([]);
  });
});

describe('a refused form', () => {
  it('passes with its errors on it', async () => {
    const cookie = await sessionCookie(test.base, 'owner');
    const pages = await reach(cookie, { start: ROOMS, most: 1 });
    const forms = pages
      .flatMap(({ html, address }) => formsOf(html, address))
      .filter(({ method, typed }) => method === 'post' && typed.length > 0);
    const byAction = [...new Map(forms.map((form) => [form.page, form])).values()];
    expect(byAction.length).toBeGreaterThan(10);
    const wrong: string[] = [];
    let refused = 0;
    const context = await openContext(walking.browser, test.base, cookie);
    const page = await context.newPage();
    const faults = collectFaults(page, test.base);
    for (const { action, values, typed, page: address } of byAction) {
      const body = new URLSearchParams({
        ...values,
        ...Object.fromEntries(typed.map((field) => [field, 'x'.repeat(5_001)])),
        _key: randomUUID(),
      });
      const answer = await ask(action, cookie, { method: 'POST', body });
      if (answer.status !== 303 || answer.headers.get('location') !== address) continue;
      const found = await faultsOf(page, faults, { address });
      if ((await page.$('.error-summary, .wrong')) !== null) refused += 1;
      wrong.push(...found.map((fault) => `refused ${fault}`));
    }
    await context.close();
    expect(wrong).toEqual([]);
    expect(refused).toBeGreaterThan(5);
  }, 120_000);
});

describe('the first load', () => {
  it('of each room is under 100 kB, fonts apart', async () => {
    const cookie = await sessionCookie(test.base, 'owner');
    const { id } = await test.db.job.findFirstOrThrow({ where: { stage: 'opened' } });
    const heavy: string[] = [];
    for (const address of [...ROOMS, `/counter/jobs/${id}`, `/bays/jobs/${id}/card`, `/till/jobs/${id}`]) {
      const context = await openContext(walking.browser, test.base, cookie);
      const { bytes, parts } = await transferredBytes(await context.newPage(), test.base + address);
      await context.close();
      expect(bytes).toBeGreaterThan(5_000);
      if (bytes >= MOST_BYTES) heavy.push(`${address}: ${Math.round(bytes / 1_000)} kB (${parts.join(', ')})`);
    }
    expect(heavy).toEqual([]);
  });
});

describe('a workshop with nothing in it yet', () => {
  it.each(['owner', 'desk', 'tech'] as const satisfies readonly StaffName[])(
    'passes for %s',
    async (name) => {
      await test.furnish();
      const cookie = await sessionCookie(test.base, name);
      const pages = await reach(cookie, { start: [HOME[name]], most: 1 });
      expect(pages.length).toBeGreaterThanOrEqual(3);
      expect(
        await lookAt(
          cookie,
          pages.filter(({ status }) => status === 200),
        ),
      ).toEqual([]);
    },
    120_000,
  );
});
