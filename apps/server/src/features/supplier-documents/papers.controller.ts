import { Body, Controller, Get, Param, Post, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { Only } from '../../platform/access/access.decorator.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { urls } from '../../web/urls.ts';
import { Units } from '../returns/units.service.ts';
import { Decisions } from './decisions.service.ts';
import { Documents } from './documents.service.ts';
import { AcceptDto, PieceCodeDto, ReasonDto } from './dto/decision.dto.ts';
import { TypedDocumentDto } from './dto/typed-document.dto.ts';
import { type PaperFormView, presentPaperForm } from './paper-form.presenter.ts';
import { type PaperView, presentPaper } from './paper.presenter.ts';
import { type PapersView, presentPapers } from './papers.presenter.ts';

/** Suppliers' invoices, credit notes and statements: typed in, decided on, withdrawn. */
@ApiExcludeController()
@Controller('returns-shelf/documents')
@Only('desk', 'owner')
export class PapersController {
  constructor(
    private readonly documents: Documents,
    private readonly decisions: Decisions,
    private readonly units: Units,
    private readonly workshop: WorkshopFacts,
    private readonly flashes: Flashes,
  ) {}

  @Get()
  @Render('features/supplier-documents/views/papers.hbs')
  async home(@FormBack('settle') settle: FormState): Promise<PapersView> {
    const [home, names, { currency }] = await Promise.all([this.documents.home(), this.units.staffNames(), this.workshop.get()]);
    return presentPapers(home, { settle, currency, names });
  }

  @Get('new/credit-note')
  @Render('features/supplier-documents/views/paper-form.hbs')
  askCreditNote(@FormBack('paper') form: FormState): Promise<PaperFormView> {
    return this.ask('credit-note', form);
  }

  @Get('new/invoice')
  @Render('features/supplier-documents/views/paper-form.hbs')
  askInvoice(@FormBack('paper') form: FormState): Promise<PaperFormView> {
    return this.ask('invoice', form);
  }

  @Post('new/credit-note')
  @Redirect('/', 303)
  async addCreditNote(@Body() input: TypedDocumentDto): Promise<{ url: string }> {
    const id = await this.documents.enterTyped('credit-note', input);
    return { url: await this.flashes.say(urls.paper(id), `Credit note ${input.number} is entered.`) };
  }

  @Post('new/invoice')
  @Redirect('/', 303)
  async addInvoice(@Body() input: TypedDocumentDto): Promise<{ url: string }> {
    const id = await this.documents.enterTyped('invoice', input);
    return { url: await this.flashes.say(urls.paper(id), `Invoice ${input.number} is entered.`) };
  }

  @Get(':id')
  @Render('features/supplier-documents/views/paper.hbs')
  async paper(
    @Param('id', IdPipe) id: string,
    @FormBack('by-hand') byHand: FormState,
    @FormBack('withdraw') withdraw: FormState,
    @FormBack('settle') settle: FormState,
  ): Promise<PaperView> {
    const [whole, names, place] = await Promise.all([this.documents.get(id), this.units.staffNames(), this.workshop.get()]);
    return presentPaper(whole, { byHand, withdraw, settle, names, ...place });
  }

  @Post(':id/matches/:matchId/accept')
  @Redirect('/', 303)
  async accept(
    @Param('id', IdPipe) id: string,
    @Param('matchId', IdPipe) matchId: string,
    @Body() { role }: AcceptDto,
  ): Promise<{ url: string }> {
    await this.decisions.accept(id, matchId, role);
    return { url: await this.flashes.say(urls.paper(id), 'The line is laid.') };
  }

  @Post(':id/matches/:matchId/end')
  @Redirect('/', 303)
  async end(
    @Param('id', IdPipe) id: string,
    @Param('matchId', IdPipe) matchId: string,
    @Body() { why }: ReasonDto,
  ): Promise<{ url: string }> {
    await this.decisions.end(id, matchId, why);
    return { url: await this.flashes.say(urls.paper(id), 'It is taken back; what it had entered is countered.') };
  }

  @Post(':id/lines/:lineId/match')
  @Redirect('/', 303)
  async byHand(
    @Param('id', IdPipe) id: string,
    @Param('lineId', IdPipe) lineId: string,
    @Body() { code }: PieceCodeDto,
  ): Promise<{ url: string }> {
    await this.decisions.byHand(id, lineId, code);
    return { url: await this.flashes.say(urls.paper(id), 'The line is laid by hand.') };
  }

  @Post(':id/withdraw')
  @Redirect('/', 303)
  async withdraw(@Param('id', IdPipe) id: string, @Body() { why }: ReasonDto): Promise<{ url: string }> {
    await this.documents.withdraw(id, why);
    return { url: await this.flashes.say(urls.paper(id), 'It is withdrawn; its entries are countered.') };
  }

  @Post('differences/:differenceId/settle')
  @Redirect('/', 303)
  async settle(@Param('differenceId', IdPipe) differenceId: string, @Body() { why }: ReasonDto): Promise<{ url: string }> {
    await this.decisions.settle(differenceId, why);
    return { url: await this.flashes.say(urls.papers, 'The difference is settled.') };
  }

  private async ask(kind: 'credit-note' | 'invoice', form: FormState): Promise<PaperFormView> {
    const [suppliers, { currency }] = await Promise.all([this.documents.suppliers(), this.workshop.get()]);
    return presentPaperForm(form, { kind, suppliers, currency });
  }
}
