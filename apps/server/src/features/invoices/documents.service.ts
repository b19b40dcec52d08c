import { createHash } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { freezeDocument, type InvoiceDocument, thawDocument, toUbl } from '#libs/invoicing';
import { Clock } from '../../platform/clock.ts';
import { PdfRenderer } from '../../platform/pdf/pdf-renderer.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { damagedRecord, noInvoice } from './invoices.errors.ts';
import { type InvoiceFileRow, InvoicesRepository } from './invoices.repository.ts';
import { presentPrint } from './print.presenter.ts';

/** The files of an issued invoice: made from the frozen record on first asking, kept, and the same ever after. */
@Injectable()
export class DocumentsService {
  constructor(
    private readonly invoices: InvoicesRepository,
    private readonly renderer: PdfRenderer,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
  ) {}

  /** @throws no-browser where nothing can print: the invoice stands, its page comes later. */
  async pdf(invoiceId: string): Promise<InvoiceFileRow> {
    return this.kept(invoiceId, {
      kind: 'pdf',
      mediaType: 'application/pdf',
      make: async (document) => {
        const { isDemo } = await this.workshop.get();
        return this.renderer.render({ template: 'features/invoices/views/print.hbs', view: presentPrint(document, isDemo), paper: 'a4' });
      },
    });
  }

  async ubl(invoiceId: string): Promise<InvoiceFileRow> {
    return this.kept(invoiceId, {
      kind: 'ubl',
      mediaType: 'application/xml',
      make: (document) => Promise.resolve(new TextEncoder().encode(toUbl(document))),
    });
  }

  private async kept(
    invoiceId: string,
    { kind, mediaType, make }: { kind: string; mediaType: string; make: (document: InvoiceDocument) => Promise<Uint8Array> },
  ): Promise<InvoiceFileRow> {
    const known = await this.invoices.file(invoiceId, kind);
    if (known) return known;
    const invoice = await this.invoices.find(invoiceId);
    if (!invoice) throw noInvoice();
    const proven = thawDocument(freezeDocument(invoice.document));
    if (!proven.ok) throw damagedRecord(proven.errors.map(({ message }) => message).join(' '));
    const bytes = Uint8Array.from(await make(proven.value));
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    await this.invoices.keepFile({ invoiceId, kind, mediaType, bytes, sha256, madeAt: this.clock.now() });
    return (await this.invoices.file(invoiceId, kind)) ?? { mediaType, bytes };
  }
}
