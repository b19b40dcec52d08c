import { Body, Controller, Get, Post, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { Only } from '../../platform/access/access.decorator.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { urls } from '../../web/urls.ts';
import { WorkshopDto } from './dto/workshop.dto.ts';
import { presentWorkshopForm, type WorkshopFormView } from './workshop-form.presenter.ts';
import { WorkshopService } from './workshop.service.ts';

@ApiExcludeController()
@Controller('office/workshop')
@Only('owner')
export class WorkshopController {
  constructor(
    private readonly workshop: WorkshopFacts,
    private readonly service: WorkshopService,
    private readonly flashes: Flashes,
  ) {}

  @Get()
  @Render('features/records/views/workshop.hbs')
  async form(@FormBack('workshop') form: FormState): Promise<WorkshopFormView> {
    return presentWorkshopForm(form, await this.workshop.get());
  }

  @Post()
  @Redirect('/', 303)
  async change(@Body() input: WorkshopDto): Promise<{ url: string }> {
    await this.service.change(input);
    return { url: await this.flashes.say(urls.office, 'The workshop details are changed.') };
  }
}
