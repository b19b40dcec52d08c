import { Body, Controller, Get, Param, Post, Query, Redirect, Render, Req, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { AnyStaff } from '../../../platform/access/access.decorator.ts';
import { Clock } from '../../../platform/clock.ts';
import { IdPipe } from '../../../platform/id.pipe.ts';
import { FormBack } from '../../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../../platform/pages/flash.ts';
import type { FormState } from '../../../platform/pages/form-state.ts';
import { PdfRenderer } from '../../../platform/pdf/pdf-renderer.ts';
import { urls } from '../../../web/urls.ts';
import { addressOf } from '../address-of.ts';
import { BenchService } from '../bench.service.ts';
import { nothingToPour } from '../coolant.errors.ts';
import { VehicleFactDto, WithdrawFactDto } from '../dto/vehicle-fact.dto.ts';
import { type Query as Typed } from '../form/read-bench-form.ts';
import { askRefill } from '../refill/ask-refill.ts';
import { JobBenchService } from './job-bench.service.ts';
import { knownFigures } from './known-figures.ts';
import { type JobBenchView, presentJobBench } from './present-job-bench.ts';
import { presentSlip } from './present-slip.ts';

@ApiExcludeController()
@Controller('coolant-bench/jobs')
@AnyStaff()
export class JobBenchController {
  constructor(
    private readonly bench: BenchService,
    private readonly jobs: JobBenchService,
    private readonly renderer: PdfRenderer,
    private readonly clock: Clock,
    private readonly flashes: Flashes,
  ) {}

  @Get(':id')
  @Render('features/coolant/views/refill.hbs')
  async job(
    @Param('id', IdPipe) id: string,
    @Query() typed: Typed,
    @FormBack('fact') fact: FormState,
    @FormBack('withdraw') withdraw: FormState,
    @Req() request: FastifyRequest,
  ): Promise<JobBenchView> {
    const [context, { row, job }] = await Promise.all([this.bench.context(), this.jobs.open(id)]);
    const asked = askRefill(context, knownFigures(job, context), typed);
    return presentJobBench({ ...asked, context, address: addressOf(request) }, { row, job, forms: { fact, withdraw } });
  }

  @Get(':id/slip.pdf')
  async slip(@Param('id', IdPipe) id: string, @Query() typed: Typed, @Res() reply: FastifyReply): Promise<void> {
    const [context, { row, job }] = await Promise.all([this.bench.context(), this.jobs.open(id)]);
    const { groups, form, answer } = askRefill(context, knownFigures(job, context), typed);
    if (answer.kind === 'refused') throw nothingToPour(answer.message);
    if (answer.kind === 'asks')
      throw nothingToPour('The refill is not reckoned yet: open the bench for this job and fill in what it asks for.');
    const fields = groups.flatMap((group) => group.fields);
    const view = presentSlip({ row, fields, form, answer, context, now: this.clock.now() });
    const bytes = await this.renderer.render({ template: 'features/coolant/views/slip.hbs', view, paper: 'a4' });
    await reply.type('application/pdf').header('content-disposition', 'inline; filename="coolant-slip.pdf"').send(Buffer.from(bytes));
  }

  @Post(':id/facts')
  @Redirect('/', 303)
  async state(@Param('id', IdPipe) id: string, @Body() input: VehicleFactDto): Promise<{ url: string }> {
    await this.jobs.state(id, input);
    return { url: await this.flashes.say(urls.jobCoolant(id), 'It is kept with the car, beside what was stated before.') };
  }

  @Post(':id/facts/:factId/withdraw')
  @Redirect('/', 303)
  async withdraw(
    @Param('id', IdPipe) id: string,
    @Param('factId', IdPipe) factId: string,
    @Body() { why }: WithdrawFactDto,
  ): Promise<{ url: string }> {
    await this.jobs.withdraw(id, factId, why);
    return { url: await this.flashes.say(urls.jobCoolant(id), 'It no longer counts; it stays on record with the reason.') };
  }
}
