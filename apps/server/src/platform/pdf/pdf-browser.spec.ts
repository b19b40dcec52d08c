import { describe, expect, it } from '@jest/globals';
import type { Browser, Page } from 'puppeteer';
import { PdfBrowser, type Running } from './pdf-browser.ts';

class PretendedBrowsers extends PdfBrowser {
  readonly started: { closed: boolean }[] = [];

  protected override launch(): Promise<Running> {
    const state = { closed: false };
    this.started.push(state);
    const idle = Array.from({ length: 4 }, () => ({}) as Page);
    const close = (): Promise<void> => Promise.resolve(void (state.closed = true));
    const browser = { close } as unknown as Browser;
    return Promise.resolve({ browser, profile: '/nowhere/at-all', idle, documents: 0, lent: 0, isRetired: false });
  }
}

const fail = (): Promise<never> => Promise.reject(new Error('crash'));

describe('PdfBrowser', () => {
  it('replaces a browser whose page failed, and closes it only when its last page is back', async () => {
    const browsers = new PretendedBrowsers();
    let finish: () => void = () => undefined;
    const long = browsers.withPage(() => new Promise<void>((resolve) => (finish = resolve)));
    await expect(browsers.withPage(fail)).rejects.toThrow('crash');
    expect(browsers.started).toEqual([{ closed: false }]);
    await browsers.withPage(() => Promise.resolve());
    expect(browsers.started).toEqual([{ closed: false }, { closed: false }]);
    finish();
    await long;
    expect(browsers.started).toEqual([{ closed: true }, { closed: false }]);
  });

  it('prints five hundred documents with one, then with another', async () => {
    const browsers = new PretendedBrowsers();
    for (let index = 0; index < 501; index += 1) await browsers.withPage(() => Promise.resolve());
    expect(browsers.started).toEqual([{ closed: true }, { closed: false }]);
  });

  it('closes on shutdown', async () => {
    const browsers = new PretendedBrowsers();
    await browsers.withPage(() => Promise.resolve());
    await browsers.onApplicationShutdown();
    expect(browsers.started).toEqual([{ closed: true }]);
  });
});
