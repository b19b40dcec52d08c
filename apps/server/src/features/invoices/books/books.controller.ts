import { Body, Controller, Get, Param, Post, Query, Redirect, Render, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { Only } from '../../../platform/access/access.decorator.ts';
import { Clock } from '../../../platform/clock.ts';
import { csvText } from '../../../platform/csv-text.ts';
import { IdPipe } from '../../../platform/id.pipe.ts';
import { MOST_ROWS } from '../../../platform/paging.ts';
import { FormBack } from '../../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../../platform/pages/flash.ts';
import { EMPTY_FORM, type FormState } from '../../../platform/pages/form-state.ts';
import { WorkshopFacts } from '../../../platform/workshop-facts.ts';
import { dayColumn, isoDay } from '../../../web/dates.ts';
import { urls } from '../../../web/urls.ts';
import { CashUpDto } from '../dto/cash-up.dto.ts';
import { badFigure } from '../invoices.errors.ts';
import { ReceiptService } from '../money/receipt.service.ts';
import { type CashUpView, type JournalView, type OverdueView, presentCashUp, presentJournal, presentOverdue } from './books.presenter.ts';
import { BooksRepository } from './books.repository.ts';
import { CashUpService } from './cash-up.service.ts';
import { journalRows } from './journal.ts';

const PAST = 30;

/** A day of a query; a wrong one is said, never guessed. */
function dayOf(query: unknown, field: string): Date {
  const day = typeof query === 'string' ? dayColumn(query) : undefined;
  if (!day) throw badFigure(field, 'Choose the day, such as 2026-06-01.');
  return day;
}

@ApiExcludeController()
@Controller('till')
@Only('desk', 'owner')
export class BooksController {
  constructor(
    private readonly books: BooksRepository,
    private readonly cashUps: CashUpService,
    private readonly receipts: ReceiptService,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
    private readonly flashes: Flashes,
  ) {}

  @Get('overdue')
  @Render('features/invoices/views/overdue.hbs')
  async overdue(): Promise<OverdueView> {
    const { timeZone, currency } = await this.workshop.get();
    const today = isoDay(this.clock.now(), timeZone);
    return presentOverdue(await this.books.overdue(today, MOST_ROWS), { today, currency });
  }

  @Get('cash-up')
  @Render('features/invoices/views/cash-up.hbs')
  async cashUp(@FormBack('cash-up') form: FormState): Promise<CashUpView> {
    const [taken, float, past, { timeZone, currency }] = await Promise.all([
      this.books.uncounted(),
      this.books.lastFloat(),
      this.books.cashUps(PAST),
      this.workshop.get(),
    ]);
    return presentCashUp({ taken, float, past }, { form, timeZone, currency });
  }

  @Post('cash-up')
  @Redirect('/', 303)
  async close(@Body() input: CashUpDto): Promise<{ url: string }> {
    await this.cashUps.close(input);
    return { url: await this.flashes.say(urls.cashUp, 'Counted and closed.') };
  }

  @Get('journal')
  @Render('features/invoices/views/journal.hbs')
  async journal(): Promise<JournalView> {
    const { timeZone } = await this.workshop.get();
    return presentJournal(EMPTY_FORM, isoDay(this.clock.now(), timeZone));
  }

  @Get('journal.csv')
  async journalFile(@Query('from') from: unknown, @Query('to') to: unknown, @Res() reply: FastifyReply): Promise<void> {
    const [first, last] = [dayOf(from, 'from'), dayOf(to, 'to')];
    const { currency } = await this.workshop.get();
    const rows = journalRows(await this.books.documentsBetween(first, last), await this.books.paymentsBetween(first, last, currency));
    const name = `journal-${isoDay(first, 'utc')}-${isoDay(last, 'utc')}.csv`;
    await reply.type('text/csv; charset=utf-8').header('content-disposition', `attachment; filename="${name}"`).send(csvText(rows));
  }

  @Get('payments/:id/receipt.pdf')
  async receipt(@Param('id', IdPipe) id: string, @Res() reply: FastifyReply): Promise<void> {
    const bytes = await this.receipts.pdf(id);
    await reply.type('application/pdf').header('content-disposition', 'inline; filename="receipt.pdf"').send(Buffer.from(bytes));
  }
}
