import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import puppeteer, { type Browser, type Page } from 'puppeteer';
import { findBrowser, isHeadlessShell, QUIET_ARGS } from '#launch/browser';

export const DESK = { width: 1440, height: 900 };
export const TABLET = { width: 1024, height: 768, hasTouch: true };

export interface WalkingBrowser {
  browser: Browser;
  close: () => Promise<void>;
}

export async function openBrowser(): Promise<WalkingBrowser> {
  const executablePath = await findBrowser();
  if (executablePath === undefined) throw new Error('The browser tests need a browser of the Chromium family: npm test installs one');
  const userDataDir = mkdtempSync(path.join(tmpdir(), 'runwarm-walk-'));
  const browser = await puppeteer.launch({
    executablePath,
    headless: isHeadlessShell(executablePath) ? 'shell' : true,
    userDataDir,
    args: process.getuid?.() === 0 ? [...QUIET_ARGS, '--no-sandbox'] : QUIET_ARGS,
  });
  return {
    browser,
    close: async () => {
      await browser.close();
      rmSync(userDataDir, { recursive: true, force: true });
    },
  };
}

/** One person at one screen: opens pages, fills forms and presses buttons as they are seen. */
export class Walker {
  private constructor(
    readonly page: Page,
    private readonly base: string,
  ) {}

  static async arrive(browser: Browser, base: string, viewport: { width: number; height: number; hasTouch?: boolean }): Promise<Walker> {
    // A context of its own: each person has their own cookies.
    const page = await (await browser.createBrowserContext()).newPage();
    await page.setViewport(viewport);
    page.on('pageerror', (error) => {
      throw new Error(`The page failed: ${String(error)}`);
    });
    return new Walker(page, base);
  }

  async open(address: string): Promise<void> {
    const answer = await this.page.goto(this.base + address, { waitUntil: 'load' });
    if (!answer || answer.status() >= 400) throw new Error(`${address} answered ${answer?.status()}`);
  }

  async signIn(name: string, secret: string): Promise<void> {
    await this.open('/sign-in');
    await this.type('sign-in', { name, secret });
    await this.send('sign-in');
  }

  /** Text fields of the named form. */
  async type(form: string, values: Record<string, string>): Promise<void> {
    for (const [name, value] of Object.entries(values)) {
      const field = await this.page.$(`${formSelector(form)} [name="${name}"]`);
      if (!field) throw new Error(`${this.page.url()} has no field ${name} in the form ${form}`);
      await this.page.evaluate(
        `(() => { const field = document.querySelector(${JSON.stringify(`${formSelector(form)} [name="${name}"]`)}); field.closest('details')?.setAttribute('open', ''); field.value = ''; })()`,
      );
      // A date or time field types by the browser's own language; its value is set as the page would send it.
      const kind = await this.page.evaluate(`document.querySelector(${JSON.stringify(`${formSelector(form)} [name="${name}"]`)}).type`);
      if (kind === 'date' || kind === 'time') await this.set(form, name, value);
      else await field.type(value);
    }
  }

  /** A list's entry, a plate of a group, or a tick. */
  async choose(form: string, values: Record<string, string>): Promise<void> {
    for (const [name, value] of Object.entries(values)) {
      const list = await this.page.$(`${formSelector(form)} select[name="${name}"]`);
      if (list) {
        await list.select(value);
        continue;
      }
      const plate = `${formSelector(form)} input[name="${name}"][value="${value}"]`;
      if (!(await this.page.$(plate))) throw new Error(`${this.page.url()} offers no ${name} ${value} in the form ${form}`);
      await this.page.evaluate(`document.querySelector(${JSON.stringify(plate)}).click()`);
    }
  }

  /** Chooses a file of this machine. */
  async attach(form: string, name: string, file: string): Promise<void> {
    const field = await this.page.$(`${formSelector(form)} input[type="file"][name="${name}"]`);
    if (!field) throw new Error(`${this.page.url()} takes no file ${name} in the form ${form}`);
    const [chooser] = await Promise.all([this.page.waitForFileChooser(), field.click()]);
    await chooser.accept([file]);
  }

  async tick(form: string, name: string): Promise<void> {
    await this.page.evaluate(`document.querySelector(${JSON.stringify(`${formSelector(form)} input[name="${name}"]`)}).click()`);
  }

  /** Presses the form's button (the one of that value, where it has several) and waits for the page that follows. */
  async send(form: string, button?: { name: string; value: string }): Promise<void> {
    const which = button ? `button[name="${button.name}"][value="${button.value}"]` : 'button[type="submit"]';
    const selector = `${formSelector(form)} ${which}`;
    await this.page.evaluate(`document.querySelector(${JSON.stringify(selector)})?.closest('details')?.setAttribute('open', '')`);
    const found = await this.page.$(selector);
    if (!found) throw new Error(`${this.page.url()} has no such button in the form ${form}`);
    const [answer] = await Promise.all([this.page.waitForNavigation({ waitUntil: 'load' }), found.click()]);
    if (answer && answer.status() >= 400 && answer.status() !== 401) throw new Error(`${form} answered ${answer.status()}`);
  }

  async has(form: string): Promise<boolean> {
    return (await this.page.$(formSelector(form))) !== null;
  }

  async follow(text: string): Promise<void> {
    const link = await this.page.$(`::-p-xpath(//a[contains(normalize-space(.), ${JSON.stringify(text)})])`);
    if (!link) throw new Error(`${this.page.url()} has no link “${text}”`);
    await Promise.all([this.page.waitForNavigation({ waitUntil: 'load' }), link.click()]);
  }

  async text(): Promise<string> {
    return String(await this.page.evaluate(`document.body.innerText`));
  }

  address(): string {
    return new URL(this.page.url()).pathname;
  }

  async leave(): Promise<void> {
    await this.page.browserContext().close();
  }

  private async set(form: string, name: string, value: string): Promise<void> {
    await this.page.evaluate(
      `document.querySelector(${JSON.stringify(`${formSelector(form)} [name="${name}"]`)}).value = ${JSON.stringify(value)}`,
    );
  }
}

const formSelector = (form: string): string => `form:has(input[name="_form"][value="${form}"])`;
