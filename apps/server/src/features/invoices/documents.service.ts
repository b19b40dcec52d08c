import { createHash } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { freezeDocument, type InvoiceDocument, structuredProblems, thawDocument, toCii, toUbl } from '#libs/invoicing';
import { Clock } from '../../platform/clock.ts';
import { PdfRenderer } from '../../platform/pdf/pdf-renderer.ts';
import { type Workshop, WorkshopFacts } from '../../platform/workshop-facts.ts';
import { hybridPdf } from './documents/hybrid-pdf.ts';
import { damagedRecord, noInvoice, notStructured } from './invoices.errors.ts';
import { type InvoiceFileRow, type InvoiceRow, InvoicesRepository } from './invoices.repository.ts';
import { presentPrint } from './print.presenter.ts';

type Issued = Pick<InvoiceRow, 'document' | 'issuedAt'>;

/** The files of an issued invoice: made from the frozen record on first asking, kept, and the same ever after. */
@Injectable()
export class DocumentsService {
  constructor(
    private readonly invoices: InvoicesRepository,
    private readonly renderer: PdfRenderer,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
  ) {}

  /**
   * The printed page. By the workshop's setting the structured invoice is in it, where the document can be structured at all.
   *
   * @throws no-browser where nothing can print: the invoice stands, its page comes later.
   */
  async pdf(invoiceId: string): Promise<InvoiceFileRow> {
    return this.kept(invoiceId, {
      kind: 'pdf',
      mediaType: 'application/pdf',
      make: async ({ document, issuedAt }) => {
        const { isDemo, paper, pdfForm } = await this.workshop.get();
        const page = await this.renderer.render({
          template: 'features/invoices/views/print.hbs',
          view: presentPrint(document, isDemo),
          paper,
        });
        if (!isHybrid(document, pdfForm)) return page;
        return hybridPdf(page, { xml: asBytes(toCii(document)), issuedAt });
      },
    });
  }

  async ubl(invoiceId: string): Promise<InvoiceFileRow> {
    return this.structured(invoiceId, 'ubl', toUbl);
  }

  async cii(invoiceId: string): Promise<InvoiceFileRow> {
    return this.structured(invoiceId, 'cii', toCii);
  }

  private structured(invoiceId: string, kind: 'ubl' | 'cii', write: (document: InvoiceDocument) => string): Promise<InvoiceFileRow> {
    return this.kept(invoiceId, {
      kind,
      mediaType: 'application/xml',
      make: ({ document }) => {
        const problems = structuredProblems(document);
        if (problems.length > 0) throw notStructured(problems);
        return Promise.resolve(asBytes(write(document)));
      },
    });
  }

  private async kept(
    invoiceId: string,
    { kind, mediaType, make }: { kind: string; mediaType: string; make: (issued: Issued) => Promise<Uint8Array> },
  ): Promise<InvoiceFileRow> {
    const known = await this.invoices.file(invoiceId, kind);
    if (known) return known;
    const invoice = await this.invoices.find(invoiceId);
    if (!invoice) throw noInvoice();
    const proven = thawDocument(freezeDocument(invoice.document));
    if (!proven.ok) throw damagedRecord(proven.errors.map(({ message }) => message).join(' '));
    const bytes = Uint8Array.from(await make({ document: proven.value, issuedAt: invoice.issuedAt }));
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    await this.invoices.keepFile({ invoiceId, kind, mediaType, bytes, sha256, madeAt: this.clock.now() });
    return (await this.invoices.file(invoiceId, kind)) ?? { mediaType, bytes };
  }
}

const asBytes = (text: string): Uint8Array => new TextEncoder().encode(text);

function isHybrid(document: InvoiceDocument, pdfForm: Workshop['pdfForm']): boolean {
  if (pdfForm === 'plain' || structuredProblems(document).length > 0) return false;
  return pdfForm === 'hybrid' || document.buyer?.vatId !== undefined;
}
