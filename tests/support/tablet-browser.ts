import type { Browser, BrowserContext, CDPSession, Page } from 'puppeteer';
import { PIN, tabletCode } from './tablet.ts';
import type { TestApp } from './test-app.ts';
import { TABLET } from './walker.ts';

/** A browser that is an enrolled tablet: its cookies and its storage are its own. */
export class BrowserTablet {
  private constructor(
    readonly context: BrowserContext,
    readonly page: Page,
    private readonly base: string,
  ) {}

  static async enrol(browser: Browser, { test, base, name }: { test: TestApp; base: string; name: string }): Promise<BrowserTablet> {
    const code = await tabletCode(test, name);
    const context = await browser.createBrowserContext();
    const page = await context.newPage();
    await page.setViewport(TABLET);
    await page.goto(`${base}/tablet`);
    await page.type('[name="code"]', code);
    await Promise.all([page.waitForNavigation(), page.click('form button.main')]);
    return new BrowserTablet(context, page, base);
  }

  async signIn(staffId: string, back: string): Promise<void> {
    await this.page.goto(`${this.base}/tablet?back=${encodeURIComponent(back)}`);
    await this.page.evaluate(`document.querySelector('input[name="staffId"][value="${staffId}"]').checked = true`);
    await this.page.type('[name="pin"]', PIN);
    await Promise.all([this.page.waitForNavigation(), this.page.click('form.way-in-form button.main')]);
    await this.ready();
  }

  /** The tablet's script has taken the page over. */
  async ready(): Promise<void> {
    await this.page.waitForSelector('html[data-tablet="ready"]', { timeout: 15_000 });
  }

  async open(address: string): Promise<void> {
    await this.page.goto(this.base + address);
    await this.ready();
  }

  /** Waits until the service worker holds the page, so that the network may go. */
  async worker(): Promise<void> {
    await this.page.evaluate('navigator.serviceWorker.ready.then(() => true)');
    await this.page.waitForFunction('navigator.serviceWorker.controller !== null', { timeout: 15_000 });
  }

  /** Cuts the page and its worker off: each has a network of its own to the debugger. */
  async cut(): Promise<Cut> {
    return Cut.of(this.context, this.page);
  }

  /** To a step by the card's own link, as a finger does. */
  async at(step: string): Promise<void> {
    await this.page.evaluate(`document.querySelector('#step-${step} a').click()`);
    await this.page.waitForSelector(`#step-${step}[aria-current="step"]`);
  }

  async press(form: string, button = 'button'): Promise<void> {
    const selector = `form:has(> input[name="_form"][value="${form}"])`;
    await this.page.evaluate(
      `{ const form = document.querySelector(${JSON.stringify(selector)}); form.closest('details')?.setAttribute('open', ''); form.querySelector(${JSON.stringify(`.buttons ${button}`)}).click(); }`,
    );
  }

  async fill(form: string, values: Readonly<Record<string, string>>): Promise<void> {
    for (const [name, value] of Object.entries(values)) {
      const selector = `form:has(> input[name="_form"][value="${form}"]) [name="${name}"]`;
      await this.page.evaluate(`{ const [first, ...rest] = document.querySelectorAll(${JSON.stringify(selector)});
        const all = [first, ...rest]; first.closest('details')?.setAttribute('open', '');
        const choice = all.find((one) => (one.type === 'radio' || one.type === 'checkbox') && one.value === ${JSON.stringify(value)});
        if (choice) choice.click(); else { first.value = ${JSON.stringify(value)}; first.dispatchEvent(new Event('input', { bubbles: true })); } }`);
    }
  }

  /** What the line at the foot says. */
  async line(): Promise<string> {
    return String(await this.page.evaluate(`document.querySelector('footer.sent p').innerText.replace(/\\s+/g, ' ').trim()`));
  }

  async lineSays(words: string): Promise<void> {
    await this.page.waitForFunction(`document.querySelector('footer.sent p')?.innerText.includes(${JSON.stringify(words)})`, {
      timeout: 20_000,
    });
  }

  async text(): Promise<string> {
    return String(await this.page.evaluate('document.body.innerText'));
  }

  async close(): Promise<void> {
    await this.context.close();
  }
}

/** A network that has been cut for a page and its worker, and can come back. */
export class Cut {
  private constructor(private readonly sessions: readonly CDPSession[]) {}

  static async of(context: BrowserContext, page: Page): Promise<Cut> {
    const workers = context
      .browser()
      .targets()
      .filter((target) => String(target.type()) === 'service_worker' && target.browserContext() === context);
    const sessions = [await page.createCDPSession(), ...(await Promise.all(workers.map((target) => target.createCDPSession())))];
    const cut = new Cut(sessions);
    await cut.set(true);
    return cut;
  }

  async mend(): Promise<void> {
    await this.set(false);
    for (const session of this.sessions) await session.detach().catch(() => undefined);
  }

  private async set(offline: boolean): Promise<void> {
    for (const session of this.sessions) {
      await session.send('Network.enable').catch(() => undefined);
      await session
        .send('Network.emulateNetworkConditions', { offline, latency: 0, downloadThroughput: -1, uploadThroughput: -1 })
        .catch(() => undefined);
    }
  }
}
