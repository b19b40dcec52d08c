import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser, BrowserContext, Page } from 'puppeteer';
import { SECRET, type StaffName } from './test-app.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
/** WCAG 2.2, levels A and AA; and of those rules the ones that another width can break. */
const RULES = {
  all: { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'], resultTypes: ['violations'] },
  ofWidth: { runOnly: { type: 'rule', values: ['target-size', 'scrollable-region-focusable'] }, resultTypes: ['violations'] },
} as const;

/** The session's cookie of that person, as `name=value`. */
export async function sessionCookie(base: string, name: StaffName): Promise<string> {
  const answer = await fetch(`${base}/api/v1/session`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'x-requested-with': 'fetch' },
    body: JSON.stringify({ name, secret: SECRET }),
  });
  const [cookie = ''] = answer.headers.getSetCookie();
  if (!answer.ok || cookie === '') throw new Error(`${name} could not sign in: ${answer.status}`);
  return cookie.split(';')[0] ?? '';
}

/** A browser of their own for one person (signed out, without a cookie). */
export async function openContext(browser: Browser, base: string, cookie?: string): Promise<BrowserContext> {
  const context = await browser.createBrowserContext();
  const [name = '', value = ''] = cookie?.split('=') ?? [];
  if (cookie !== undefined)
    await context.setCookie({ name, value, domain: new URL(base).hostname, path: '/', httpOnly: true, sameSite: 'Lax' });
  return context;
}

/** What went wrong on a page, in the order it happened: errors, refused styles and scripts, requests to elsewhere. */
export function collectFaults(page: Page, base: string): string[] {
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(`failed: ${String(error)}`));
  page.on('console', (message) => {
    const isOurs = message.location().url?.startsWith('pptr:') === true; // from what we run on the page to look at it
    // That a page we ask for is not there is said to the console too; its status is looked at elsewhere.
    const isOwnStatus = message.text().startsWith('Failed to load resource') && message.location().url === page.url();
    if (message.type() === 'error' && !isOwnStatus && !isOurs) faults.push(`said: ${message.text()} (${message.location().url ?? ''})`);
  });
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(`${base}/`) && !/^(data|blob|about):/.test(url)) faults.push(`asked elsewhere: ${url}`);
  });
  page.on('requestfailed', (request) => {
    // Leaving a page ends what it still loads.
    if (request.failure()?.errorText !== 'net::ERR_ABORTED')
      faults.push(`did not get ${request.url()}: ${request.failure()?.errorText ?? ''}`);
  });
  return faults;
}

/**
 * What axe finds against WCAG 2.2 AA, one line each. The script comes by the debugger, which the page's policy does not stop:
 * so the policy itself stays in force and what it refuses is seen.
 */
export async function accessFaults(page: Page, rules: keyof typeof RULES = 'all'): Promise<string[]> {
  await page.evaluate(`window.axe || (() => { ${axeSource} })()`);
  const { violations } = (await page.evaluate(`window.axe.run(document, ${JSON.stringify(RULES[rules])})`)) as AxeResults;
  return violations.map(
    ({ id, nodes }) =>
      `${id}: ${nodes
        .map(({ target }) => target.join(' '))
        .slice(0, 3)
        .join(', ')} (${nodes.length})`,
  );
}

/** How far the document is wider than the screen, in CSS pixels. */
export async function overflowPx(page: Page): Promise<number> {
  return Number(await page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth'));
}

/** Bytes over the wire for one address with nothing cached, fonts apart. */
export async function transferredBytes(page: Page, address: string): Promise<{ bytes: number; parts: string[] }> {
  const session = await page.createCDPSession();
  const kinds = new Map<string, { type: string; url: string }>();
  const parts: string[] = [];
  let bytes = 0;
  session.on('Network.responseReceived', ({ requestId, type, response }) => kinds.set(requestId, { type, url: response.url }));
  session.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    const { type = '', url = '' } = kinds.get(requestId) ?? {};
    if (type === 'Font' || url.startsWith('data:')) return;
    bytes += encodedDataLength;
    parts.push(`${new URL(url).pathname} ${Math.round(encodedDataLength)}`);
  });
  await session.send('Network.enable');
  await session.send('Network.setCacheDisabled', { cacheDisabled: true });
  await page.goto(address, { waitUntil: 'networkidle0' });
  await session.detach();
  return { bytes, parts };
}
