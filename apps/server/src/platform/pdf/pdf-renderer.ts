import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { Injectable } from '@nestjs/common';
import type { Page } from 'puppeteer';
import { createHandlebars } from '../../web/handlebars.ts';
import { DomainError } from '../domain-error.ts';
import { PdfBrowser } from './pdf-browser.ts';
import { TaskQueue } from '../task-queue.ts';

const TIME_LIMIT_MS = 20_000;
const MOST_HTML_BYTES = 4_000_000;
const ROOT = path.resolve(import.meta.dirname, '../..');

export interface PrintedDocument {
  /** Path of the template under the server's root. */
  template: string;
  view: object & { title: string; lang?: string };
  paper: 'a4' | 'letter';
}

const tooMany = (): DomainError =>
  new DomainError('unavailable', 'printing-busy', 'Too many documents are being printed. Try again in a few seconds.');
const tooLong = (): DomainError =>
  new DomainError('impossible', 'document-too-long', 'This document is too long to print. Shorten its lines.');

/** Handlebars to HTML, HTML to PDF. The same view gives the same page, wherever it is asked for. */
@Injectable()
export class PdfRenderer {
  private readonly handlebars = createPrintEngine();
  private readonly queue = new TaskQueue({ atOnce: 2, waiting: 50 }, tooMany);
  private readonly layout = this.handlebars.compile(readFileSync(path.join(ROOT, 'web/layouts/print.hbs'), 'utf8'));
  private readonly css = readPrintStyle();

  constructor(private readonly browser: PdfBrowser) {}

  html({ template, view, paper }: PrintedDocument): string {
    const body = this.handlebars.compile(readFileSync(path.join(ROOT, template), 'utf8'))(view);
    return this.layout({ ...view, paper, css: this.css, body });
  }

  /** @throws no-browser, printing-busy, document-too-long */
  async render(document: PrintedDocument): Promise<Uint8Array> {
    const html = this.html(document);
    if (Buffer.byteLength(html) - Buffer.byteLength(this.css) > MOST_HTML_BYTES) throw tooLong();
    return this.queue.run(() => this.print(html, document.paper));
  }

  private async print(html: string, paper: 'a4' | 'letter', attempt = 1): Promise<Uint8Array> {
    try {
      return await this.browser.withPage((page) => printPage(page, html, paper));
    } catch (error) {
      if (error instanceof DomainError || attempt >= 2) throw error;
      // A browser that died mid-page is replaced by then: the page is printed once more.
      return this.print(html, paper, attempt + 1);
    }
  }
}

/** Built beside us. Without it every document would come out as bare text: better not to open at all. */
function readPrintStyle(): string {
  const above = path.resolve(ROOT, '../../..');
  const file = path.join(path.basename(above) === 'dist' ? above : path.join(above, 'dist'), 'print/print.css');
  if (!existsSync(file)) throw new Error(`The style of printed documents is missing (${file}): build the site first.`);
  return readFileSync(file, 'utf8');
}

async function printPage(page: Page, html: string, paper: 'a4' | 'letter'): Promise<Uint8Array> {
  await page.setContent(html, { waitUntil: 'load', timeout: TIME_LIMIT_MS });
  return page.pdf({ format: paper, preferCSSPageSize: true, printBackground: true, tagged: true, timeout: TIME_LIMIT_MS });
}

function createPrintEngine(): ReturnType<typeof createHandlebars> {
  const handlebars = createHandlebars({});
  const partials = path.join(ROOT, 'web/partials');
  for (const file of readdirSync(partials)) {
    handlebars.registerPartial(path.basename(file, '.hbs'), readFileSync(path.join(partials, file), 'utf8'));
  }
  return handlebars;
}
