import { Body, Controller, Get, Param, Post, Query, Redirect, Render, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { Only } from '../../platform/access/access.decorator.ts';
import { Clock } from '../../platform/clock.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { MOST_ROWS } from '../../platform/paging.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { urls } from '../../web/urls.ts';
import { ProofService } from '../warm-up/proof/proof.service.ts';
import { DocumentsService } from './documents.service.ts';
import { type DraftView, presentDraft } from './draft.presenter.ts';
import { DraftsService } from './drafts.service.ts';
import { EditLineDto } from './dto/edit-line.dto.ts';
import { PaymentDto } from './dto/payment.dto.ts';
import { type InvoiceView, presentInvoice } from './invoice.presenter.ts';
import { noInvoice } from './invoices.errors.ts';
import { InvoicesRepository } from './invoices.repository.ts';
import { IssueService } from './issue.service.ts';
import { PaymentsService } from './payments.service.ts';
import { presentTill, type TillView } from './till.presenter.ts';

@ApiExcludeController()
@Controller('till')
@Only('desk', 'owner')
export class TillController {
  constructor(
    private readonly drafts: DraftsService,
    private readonly issuing: IssueService,
    private readonly invoices: InvoicesRepository,
    private readonly documents: DocumentsService,
    private readonly payments: PaymentsService,
    private readonly proof: ProofService,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
    private readonly flashes: Flashes,
  ) {}

  @Get()
  @Render('features/invoices/views/till.hbs')
  async till(): Promise<TillView> {
    const [ready, invoices, { timeZone }] = await Promise.all([
      this.invoices.readyJobs(MOST_ROWS),
      this.invoices.latest(MOST_ROWS),
      this.workshop.get(),
    ]);
    return presentTill({ ready, invoices }, { now: this.clock.now(), timeZone });
  }

  @Get('jobs/:id')
  @Render('features/invoices/views/draft.hbs')
  async draft(@Param('id', IdPipe) id: string, @Query('edit') edit: unknown, @FormBack('line') form: FormState): Promise<DraftView> {
    const draft = await this.drafts.draft(id);
    return presentDraft(draft, { form, obstacles: this.issuing.obstacles(draft), editing: typeof edit === 'string' ? edit : undefined });
  }

  @Post('jobs/:id/lines')
  @Redirect('/', 303)
  async edit(@Param('id', IdPipe) id: string, @Body() input: EditLineDto): Promise<{ url: string }> {
    await this.drafts.edit(id, input);
    return { url: await this.flashes.say(urls.draft(id), 'The draft is changed.') };
  }

  @Post('jobs/:id/issue')
  @Redirect('/', 303)
  async issue(@Param('id', IdPipe) id: string): Promise<{ url: string }> {
    const invoiceId = await this.issuing.issue(id);
    return { url: await this.flashes.say(urls.invoice(invoiceId), 'The invoice is issued.') };
  }

  @Get('invoices/:id')
  @Render('features/invoices/views/invoice.hbs')
  async invoice(@Param('id', IdPipe) id: string, @FormBack('payment') form: FormState): Promise<InvoiceView> {
    const [invoice, { timeZone, isDemo }] = await Promise.all([this.invoices.find(id), this.workshop.get()]);
    if (!invoice) throw noInvoice();
    const sheets = invoice.jobId === null ? [] : await this.proof.ofJob(invoice.jobId);
    return presentInvoice(invoice, { form, now: this.clock.now(), timeZone, isDemo, hasProof: sheets.length > 0 });
  }

  @Get('invoices/:id/document.pdf')
  async pdf(@Param('id', IdPipe) id: string, @Res() reply: FastifyReply): Promise<void> {
    const { bytes, mediaType } = await this.documents.pdf(id);
    await reply.type(mediaType).header('content-disposition', 'inline; filename="invoice.pdf"').send(Buffer.from(bytes));
  }

  @Post('invoices/:id/payments')
  @Redirect('/', 303)
  async pay(@Param('id', IdPipe) id: string, @Body() input: PaymentDto): Promise<{ url: string }> {
    await this.payments.take(id, input);
    return { url: await this.flashes.say(urls.invoice(id), 'The payment is booked.') };
  }
}
