import { Body, Controller, Get, Param, Post, Query, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { Only } from '../../platform/access/access.decorator.ts';
import { Clock } from '../../platform/clock.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { MOST_ROWS } from '../../platform/paging.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { urls } from '../../web/urls.ts';
import { DepositsService } from './deposits/deposits.service.ts';
import { DraftChangesService } from './draft-changes.service.ts';
import { type DraftView, presentDraft } from './draft.presenter.ts';
import { DraftsService } from './drafts.service.ts';
import { AdjustmentDto } from './dto/adjustment.dto.ts';
import { EditLineDto } from './dto/edit-line.dto.ts';
import { IssueDto } from './dto/issue.dto.ts';
import { PaperDto } from './dto/paper.dto.ts';
import { PayBackDto } from './dto/pay-back.dto.ts';
import { PaymentDto } from './dto/payment.dto.ts';
import { InvoicesRepository } from './invoices.repository.ts';
import { IssueService } from './issue.service.ts';
import { presentTill, type TillView } from './till.presenter.ts';

@ApiExcludeController()
@Controller('till')
@Only('desk', 'owner')
export class TillController {
  constructor(
    private readonly drafts: DraftsService,
    private readonly changes: DraftChangesService,
    private readonly deposits: DepositsService,
    private readonly issuing: IssueService,
    private readonly invoices: InvoicesRepository,
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
  async draft(
    @Param('id', IdPipe) id: string,
    @Query('edit') edit: unknown,
    @FormBack('line') line: FormState,
    @FormBack('adjust') adjust: FormState,
    @FormBack('words') words: FormState,
    @FormBack('deposit') deposit: FormState,
    @FormBack('deposit-back') back: FormState,
  ): Promise<DraftView> {
    const draft = await this.drafts.draft(id);
    return presentDraft(draft, {
      forms: { line, adjust, words, deposit, 'deposit-back': back },
      obstacles: this.issuing.obstacles(draft),
      simplifiedObstacles: this.issuing.obstacles(draft, 'simplified'),
      editing: typeof edit === 'string' ? edit : undefined,
      now: this.clock.now(),
    });
  }

  @Post('jobs/:id/lines')
  @Redirect('/', 303)
  async edit(@Param('id', IdPipe) id: string, @Body() input: EditLineDto): Promise<{ url: string }> {
    await this.changes.edit(id, input);
    return { url: await this.flashes.say(urls.draft(id), 'The draft is changed.') };
  }

  @Post('jobs/:id/adjustments')
  @Redirect('/', 303)
  async adjust(@Param('id', IdPipe) id: string, @Body() input: AdjustmentDto): Promise<{ url: string }> {
    await this.changes.adjust(id, input);
    return { url: await this.flashes.say(urls.draft(id), 'The draft is changed.') };
  }

  @Post('jobs/:id/adjustments/:adjustment/take-back')
  @Redirect('/', 303)
  async takeBack(@Param('id', IdPipe) id: string, @Param('adjustment', IdPipe) adjustment: string): Promise<{ url: string }> {
    await this.changes.takeAdjustmentBack(id, adjustment);
    return { url: await this.flashes.say(urls.draft(id), 'It is taken back.') };
  }

  @Post('jobs/:id/words')
  @Redirect('/', 303)
  async words(@Param('id', IdPipe) id: string, @Body() input: PaperDto): Promise<{ url: string }> {
    await this.changes.words(id, input);
    return { url: await this.flashes.say(urls.draft(id), 'The words are kept.') };
  }

  @Post('jobs/:id/deposits')
  @Redirect('/', 303)
  async deposit(@Param('id', IdPipe) id: string, @Body() input: PaymentDto): Promise<{ url: string }> {
    const invoiceId = await this.deposits.take(id, input);
    return invoiceId === null
      ? { url: await this.flashes.say(urls.draft(id), 'The money is booked on account.') }
      : { url: await this.flashes.say(urls.invoice(invoiceId), 'The money is booked and its invoice issued.') };
  }

  @Post('jobs/:id/deposits/back')
  @Redirect('/', 303)
  async depositBack(@Param('id', IdPipe) id: string, @Body() input: PayBackDto): Promise<{ url: string }> {
    await this.deposits.giveBack(id, input);
    return { url: await this.flashes.say(urls.draft(id), 'The money is booked as given back.') };
  }

  @Post('jobs/:id/issue')
  @Redirect('/', 303)
  async issue(@Param('id', IdPipe) id: string, @Body() { form }: IssueDto): Promise<{ url: string }> {
    const invoiceId = await this.issuing.issue(id, form);
    return { url: await this.flashes.say(urls.invoice(invoiceId), 'The invoice is issued.') };
  }
}
