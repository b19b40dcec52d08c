import { Body, Controller, Get, Param, Post, Redirect, Render, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { Only } from '../../platform/access/access.decorator.ts';
import { Clock } from '../../platform/clock.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { urls } from '../../web/urls.ts';
import { ProofService } from '../warm-up/proof/proof.service.ts';
import { type CreditView, presentCredit } from './credit/credit.presenter.ts';
import { CreditService } from './credit/credit.service.ts';
import { DocumentsService } from './documents.service.ts';
import { CreditDto } from './dto/credit.dto.ts';
import { PayBackDto } from './dto/pay-back.dto.ts';
import { PaymentDto } from './dto/payment.dto.ts';
import { type InvoiceView, presentInvoice } from './invoice.presenter.ts';
import { noInvoice, notOnceMore } from './invoices.errors.ts';
import { InvoicesRepository } from './invoices.repository.ts';
import { PaymentsService } from './money/payments.service.ts';

/** An issued document: its page, its money, and what takes it back. */
@ApiExcludeController()
@Controller('till/invoices')
@Only('desk', 'owner')
export class InvoicesController {
  constructor(
    private readonly invoices: InvoicesRepository,
    private readonly documents: DocumentsService,
    private readonly payments: PaymentsService,
    private readonly credits: CreditService,
    private readonly proof: ProofService,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
    private readonly flashes: Flashes,
  ) {}

  @Get(':id')
  @Render('features/invoices/views/invoice.hbs')
  async invoice(
    @Param('id', IdPipe) id: string,
    @FormBack('payment') form: FormState,
    @FormBack('back') back: FormState,
  ): Promise<InvoiceView> {
    const [invoice, { timeZone, isDemo }] = await Promise.all([this.invoices.find(id), this.workshop.get()]);
    if (!invoice) throw noInvoice();
    const sheets = invoice.jobId === null ? [] : await this.proof.ofJob(invoice.jobId);
    return presentInvoice(invoice, { form, back, now: this.clock.now(), timeZone, isDemo, hasProof: sheets.length > 0 });
  }

  @Get(':id/document.pdf')
  async pdf(@Param('id', IdPipe) id: string, @Res() reply: FastifyReply): Promise<void> {
    const { bytes, mediaType } = await this.documents.pdf(id);
    await reply.type(mediaType).header('content-disposition', 'inline; filename="invoice.pdf"').send(Buffer.from(bytes));
  }

  @Post(':id/payments')
  @Redirect('/', 303)
  async pay(@Param('id', IdPipe) id: string, @Body() input: PaymentDto): Promise<{ url: string }> {
    await this.payments.take(id, input);
    return { url: await this.flashes.say(urls.invoice(id), 'The payment is booked.') };
  }

  @Post(':id/payments/back')
  @Redirect('/', 303)
  async payBack(@Param('id', IdPipe) id: string, @Body() input: PayBackDto): Promise<{ url: string }> {
    await this.payments.giveBack(id, input);
    return { url: await this.flashes.say(urls.invoice(id), 'It is booked as paid back.') };
  }

  @Get(':id/credit')
  @Render('features/invoices/views/credit.hbs')
  async creditForm(@Param('id', IdPipe) id: string, @FormBack('credit') form: FormState): Promise<CreditView> {
    const [invoice, earlier] = await Promise.all([this.invoices.find(id), this.invoices.creditNotesOf(id)]);
    if (!invoice) throw noInvoice();
    if (invoice.kind === 'credit-note') throw notOnceMore();
    return presentCredit(invoice, { earlier, form });
  }

  @Post(':id/credit')
  @Redirect('/', 303)
  async credit(@Param('id', IdPipe) id: string, @Body() input: CreditDto): Promise<{ url: string }> {
    const noteId = await this.credits.credit(id, input);
    return { url: await this.flashes.say(urls.invoice(noteId), 'The credit note is issued.') };
  }
}
