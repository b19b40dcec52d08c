import { Body, Controller, Get, Param, Post, Query, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { AnyStaff } from '../../platform/access/access.decorator.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { urls } from '../../web/urls.ts';
import { type BenchView, presentBench } from './bench.presenter.ts';
import { BenchRepository } from './bench.repository.ts';
import { BenchService } from './bench.service.ts';
import { ChoiceDto } from './dto/choice.dto.ts';
import { ReadingDto } from './dto/reading.dto.ts';
import { type PartsHomeView, presentPartsHome } from './parts-home.presenter.ts';

@ApiExcludeController()
@Controller('parts-bench')
@AnyStaff()
export class BenchController {
  constructor(
    private readonly bench: BenchService,
    private readonly repository: BenchRepository,
    private readonly workshop: WorkshopFacts,
    private readonly flashes: Flashes,
  ) {}

  @Get()
  @Render('features/fitment/views/parts-bench.hbs')
  async home(): Promise<PartsHomeView> {
    return presentPartsHome(await this.bench.openJobs(), { mayOrder: currentStaff().role !== 'technician' });
  }

  @Get('jobs/:id')
  @Render('features/fitment/views/bench.hbs')
  async job(
    @Param('id', IdPipe) id: string,
    @Query('read') read: unknown,
    @FormBack('reading') readForm: FormState,
    @FormBack('unread') unreadForm: FormState,
    @FormBack('choice') chooseForm: FormState,
  ): Promise<BenchView> {
    const [bench, names, { timeZone, currency }] = await Promise.all([
      this.bench.open(id),
      this.repository.staffNames(),
      this.workshop.get(),
    ]);
    const reading = typeof read === 'string' ? read : undefined;
    return presentBench(bench, { readForm, unreadForm, chooseForm, reading, timeZone, currency, names });
  }

  @Post('jobs/:id/readings')
  @Redirect('/', 303)
  async read(@Param('id', IdPipe) id: string, @Body() input: ReadingDto): Promise<{ url: string }> {
    await this.bench.read(id, input);
    return { url: await this.flashes.say(urls.jobParts(id), 'The reading is on the bench.') };
  }

  @Post('jobs/:id/readings/:readingId/take-back')
  @Redirect('/', 303)
  async takeBack(@Param('id', IdPipe) id: string, @Param('readingId', IdPipe) readingId: string): Promise<{ url: string }> {
    await this.bench.takeBack(id, readingId);
    return { url: await this.flashes.say(urls.jobParts(id), 'The reading is taken back.') };
  }

  @Post('jobs/:id/choice')
  @Redirect('/', 303)
  async choose(@Param('id', IdPipe) id: string, @Body() input: ChoiceDto): Promise<{ url: string }> {
    await this.bench.choose(id, input);
    return { url: await this.flashes.say(urls.jobParts(id), 'The variant is settled; the hold point on the card is passed.') };
  }
}
