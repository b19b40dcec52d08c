import { Body, Controller, Get, Post, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { Only } from '../../../platform/access/access.decorator.ts';
import { FormBack } from '../../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../../platform/pages/flash.ts';
import type { FormState } from '../../../platform/pages/form-state.ts';
import { WorkshopFacts } from '../../../platform/workshop-facts.ts';
import { urls } from '../../../web/urls.ts';
import { MenuPriceDto } from '../dto/menu-price.dto.ts';
import { TillSettingsDto } from '../dto/till-settings.dto.ts';
import { presentTillSettings, type TillSettingsView } from './till-settings.presenter.ts';
import { TillSettingsRepository } from './till-settings.repository.ts';
import { TillSettingsService } from './till-settings.service.ts';

@ApiExcludeController()
@Controller('office/invoicing')
@Only('owner')
export class TillSettingsController {
  constructor(
    private readonly workshop: WorkshopFacts,
    private readonly settings: TillSettingsRepository,
    private readonly service: TillSettingsService,
    private readonly flashes: Flashes,
  ) {}

  @Get()
  @Render('features/invoices/views/settings.hbs')
  async form(@FormBack('invoicing') form: FormState, @FormBack('price') priceForm: FormState): Promise<TillSettingsView> {
    const [workshop, menu] = await Promise.all([this.workshop.get(), this.settings.menu()]);
    return presentTillSettings(workshop, { form, priceForm, menu });
  }

  @Post()
  @Redirect('/', 303)
  async change(@Body() input: TillSettingsDto): Promise<{ url: string }> {
    await this.service.change(input);
    return { url: await this.flashes.say(urls.invoicing, 'The invoice settings are changed.') };
  }

  @Post('prices')
  @Redirect('/', 303)
  async price(@Body() input: MenuPriceDto): Promise<{ url: string }> {
    await this.service.price(input);
    return { url: await this.flashes.say(urls.invoicing, 'The price is changed.') };
  }
}
