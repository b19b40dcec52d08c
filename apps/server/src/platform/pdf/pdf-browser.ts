import { mkdtemp, rm } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { Injectable, type OnApplicationShutdown } from '@nestjs/common';
import puppeteer, { type Browser, type Page } from 'puppeteer';
import { browserAdvice, findBrowser, isHeadlessShell, QUIET_ARGS } from '#launch/browser';
import { DomainError } from '../domain-error.ts';

/** A browser leaks a little with every page: after so many documents a fresh one takes over. */
const DOCUMENTS_PER_BROWSER = 500;

export interface Running {
  browser: Browser;
  profile: string;
  idle: Page[];
  documents: number;
  /** Pages in use. */
  lent: number;
  isRetired: boolean;
}

/** No browser is installed: the document is made later, by asking again. */
const noBrowser = (): DomainError => new DomainError('unavailable', 'no-browser', browserAdvice());

/** The one browser that prints. Its pages have no script, no network and no files: customers' words reach it. */
@Injectable()
export class PdfBrowser implements OnApplicationShutdown {
  private running: Promise<Running> | undefined;

  /** Lends a page that can load nothing but what it is given. A page that failed is thrown away, and its browser with it. */
  async withPage<T>(use: (page: Page) => Promise<T>): Promise<T> {
    const running = await this.start();
    running.lent += 1;
    try {
      const page = running.idle.pop() ?? (await newSealedPage(running.browser));
      const result = await use(page);
      running.documents += 1;
      running.idle.push(page);
      if (running.documents >= DOCUMENTS_PER_BROWSER) this.retire(running);
      return result;
    } catch (error) {
      this.retire(running);
      throw error;
    } finally {
      running.lent -= 1;
      if (running.isRetired && running.lent === 0) await close(running);
    }
  }

  async onApplicationShutdown(): Promise<void> {
    const running = await this.running?.catch(() => undefined);
    if (running) await close(running);
  }

  protected launch(): Promise<Running> {
    return launch();
  }

  private async start(): Promise<Running> {
    const starting = (this.running ??= this.launch());
    try {
      return await starting;
    } catch (error) {
      if (this.running === starting) this.running = undefined;
      throw error;
    }
  }

  /** The next document starts another browser; this one closes when its last page comes back. */
  private retire(running: Running): void {
    if (running.isRetired) return;
    running.isRetired = true;
    this.running = undefined;
  }
}

async function close({ browser, profile }: Running): Promise<void> {
  await browser.close().catch(() => browser.process()?.kill('SIGKILL'));
  await rm(profile, { recursive: true, force: true }).catch(() => undefined);
}

async function launch(): Promise<Running> {
  const executablePath = await findBrowser();
  if (executablePath === undefined) throw noBrowser();
  const profile = await mkdtemp(path.join(os.tmpdir(), 'runwarm-print-'));
  // Only as root (a container, a small server) does the browser's own sandbox refuse to start.
  const args = process.getuid?.() === 0 ? [...QUIET_ARGS, '--no-sandbox'] : QUIET_ARGS;
  const browser = await puppeteer.launch({
    executablePath,
    headless: isHeadlessShell(executablePath) ? 'shell' : true,
    userDataDir: profile,
    args,
    handleSIGINT: false,
    handleSIGTERM: false,
  });
  return { browser, profile, idle: [], documents: 0, lent: 0, isRetired: false };
}

async function newSealedPage(browser: Browser): Promise<Page> {
  const page = await browser.newPage();
  await page.setJavaScriptEnabled(false);
  await page.setRequestInterception(true);
  page.on('request', (request) => {
    const isOwn = request.url().startsWith('data:') || request.url() === 'about:blank';
    void (isOwn ? request.continue() : request.abort('blockedbyclient')).catch(() => undefined);
  });
  return page;
}
