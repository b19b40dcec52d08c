import { Body, Controller, Get, Param, Post, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { Only } from '../../platform/access/access.decorator.ts';
import { Clock } from '../../platform/clock.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { urls } from '../../web/urls.ts';
import { YesDto } from './dto/yes.dto.ts';
import { EstimatesService } from './estimates.service.ts';
import { presentYesForm, type YesFormView } from './yes.presenter.ts';

@ApiExcludeController()
@Controller('counter/jobs')
@Only('desk', 'owner')
export class EstimatesController {
  constructor(
    private readonly estimates: EstimatesService,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
    private readonly flashes: Flashes,
  ) {}

  @Get(':id/yes')
  @Render('features/estimates/views/yes.hbs')
  async askYes(@Param('id', IdPipe) id: string, @FormBack('yes') form: FormState): Promise<YesFormView> {
    const [job, { timeZone, currency }] = await Promise.all([this.estimates.job(id), this.workshop.get()]);
    return presentYesForm(form, { job, now: this.clock.now(), timeZone, currency });
  }

  @Post(':id/yes')
  @Redirect('/', 303)
  async recordYes(@Param('id', IdPipe) id: string, @Body() input: YesDto): Promise<{ url: string }> {
    await this.estimates.recordYes(id, input);
    return { url: await this.flashes.say(urls.job(id), 'The yes is on record.') };
  }
}
