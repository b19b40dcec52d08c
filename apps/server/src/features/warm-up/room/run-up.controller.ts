import { Body, Controller, Get, Param, Post, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { AnyStaff } from '../../../platform/access/access.decorator.ts';
import { Clock } from '../../../platform/clock.ts';
import { IdPipe } from '../../../platform/id.pipe.ts';
import { FormBack } from '../../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../../platform/pages/flash.ts';
import type { FormState } from '../../../platform/pages/form-state.ts';
import { Files } from '../../../platform/uploads/files.decorator.ts';
import type { UploadedFile } from '../../../platform/uploads/request-files.ts';
import { TakesFiles } from '../../../platform/uploads/takes-files.decorator.ts';
import { WorkshopFacts } from '../../../platform/workshop-facts.ts';
import { urls } from '../../../web/urls.ts';
import { Drafts } from '../drafts/drafts.service.ts';
import { GaugeLookDto } from '../dto/gauge-look.dto.ts';
import { LogSettingDto } from '../dto/log-setting.dto.ts';
import { WithdrawLogDto } from '../dto/withdraw-log.dto.ts';
import { LOG_BYTES } from '../log-file/log-bytes.ts';
import { presentRunUpHome, type RunUpHomeView } from './present-home.ts';
import { presentRunUpJob, type RunUpJobView } from './present-job.ts';
import { presentWarmUpLog, type WarmUpLogView } from './present-log.ts';
import { RunUp } from './run-up.service.ts';

/** The Run-up: logs of a job, what they say, what is still owed. */
@ApiExcludeController()
@Controller('run-up')
@AnyStaff()
export class RunUpController {
  constructor(
    private readonly runUp: RunUp,
    private readonly drafts: Drafts,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
    private readonly flashes: Flashes,
  ) {}

  @Get()
  @Render('features/warm-up/views/run-up.hbs')
  async home(): Promise<RunUpHomeView> {
    const [jobs, { timeZone }] = await Promise.all([this.runUp.jobList(), this.workshop.get()]);
    return presentRunUpHome(jobs, { now: this.clock.now(), timeZone });
  }

  @Get('jobs/:id')
  @Render('features/warm-up/views/job.hbs')
  async job(@Param('id', IdPipe) id: string, @FormBack('log') log: FormState, @FormBack('gauge') gauge: FormState): Promise<RunUpJobView> {
    return presentRunUpJob(await this.runUp.ofJob(id), { log, gauge });
  }

  @Post('jobs/:id/logs')
  @TakesFiles({ mostFiles: 1, mostBytes: LOG_BYTES })
  @Redirect('/', 303)
  async add(
    @Param('id', IdPipe) id: string,
    @Body() input: LogSettingDto,
    @Files('file') [file]: readonly UploadedFile[],
  ): Promise<{ url: string }> {
    return { url: urls.logDraft(await this.drafts.take(id, input, file)) };
  }

  @Post('jobs/:id/gauge')
  @Redirect('/', 303)
  async look(@Param('id', IdPipe) id: string, @Body() input: GaugeLookDto): Promise<{ url: string }> {
    await this.runUp.look(id, input);
    return { url: await this.flashes.say(urls.jobRunUp(id), 'What was seen on the gauge is kept.') };
  }

  @Get('logs/:id')
  @Render('features/warm-up/views/log.hbs')
  async log(@Param('id', IdPipe) id: string, @FormBack('withdraw') form: FormState): Promise<WarmUpLogView> {
    const [log, { timeZone }] = await Promise.all([this.runUp.log(id), this.workshop.get()]);
    return presentWarmUpLog(log, { form, timeZone });
  }

  @Post('logs/:id/withdraw')
  @Redirect('/', 303)
  async withdraw(@Param('id', IdPipe) id: string, @Body() { why }: WithdrawLogDto): Promise<{ url: string }> {
    const jobId = await this.runUp.withdraw(id, why);
    return { url: await this.flashes.say(urls.jobRunUp(jobId), 'The log stays on record and no longer counts.') };
  }
}
