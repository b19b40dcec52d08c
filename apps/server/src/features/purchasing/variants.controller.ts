import { Body, Controller, Get, Param, Post, Query, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { Only } from '../../platform/access/access.decorator.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { dateText } from '../../web/dates.ts';
import { urls } from '../../web/urls.ts';
import { ListingDto, PriceDto, StatementDto, VariantDto } from './dto/variant.dto.ts';
import { notOnTheList } from './purchasing.errors.ts';
import { SuppliersService } from './suppliers.service.ts';
import { presentVariantForm, type VariantFormView } from './variant-form.presenter.ts';
import { presentVariant, presentVariants, type VariantsView, type VariantView } from './variants.presenter.ts';
import { Variants } from './variants.service.ts';

const searched = (typed: unknown): string => (typeof typed === 'string' ? typed.replaceAll('\0', '').trim().slice(0, 60) : '');

@ApiExcludeController()
@Controller('parts-bench/orders/variants')
@Only('desk', 'owner')
export class VariantsController {
  constructor(
    private readonly variants: Variants,
    private readonly suppliers: SuppliersService,
    private readonly workshop: WorkshopFacts,
    private readonly flashes: Flashes,
  ) {}

  @Get()
  @Render('features/purchasing/views/variants.hbs')
  async list(@Query('q') typed: unknown): Promise<VariantsView> {
    const words = searched(typed);
    const [variants, { currency }] = await Promise.all([this.variants.search(words), this.workshop.get()]);
    return presentVariants(words, variants, currency);
  }

  @Get('new')
  @Render('features/purchasing/views/variant-form.hbs')
  async askNew(
    @Query('family') key: unknown,
    @Query('engine') engine: unknown,
    @FormBack('variant') form: FormState,
  ): Promise<VariantFormView> {
    const [rows, suppliers, { currency }] = await Promise.all([this.variants.families(), this.suppliers.all(), this.workshop.get()]);
    const families = rows.map(({ family }) => family);
    const family = families.find(({ id }) => id === (key ?? 'thermostat')) ?? families[0];
    if (!family) throw notOnTheList('family');
    return presentVariantForm(form, { family, families, suppliers, engineCode: searched(engine), currency });
  }

  @Post('new')
  @Redirect('/', 303)
  async add(@Body() input: VariantDto): Promise<{ url: string }> {
    const id = await this.variants.add(input);
    return { url: await this.flashes.say(urls.variant(id), `${input.partNumber} is on record.`) };
  }

  @Get(':id')
  @Render('features/purchasing/views/variant.hbs')
  async variant(
    @Param('id', IdPipe) id: string,
    @Query('say') saying: unknown,
    @FormBack('statement') statement: FormState,
    @FormBack('price') price: FormState,
    @FormBack('listing') listing: FormState,
  ): Promise<VariantView> {
    const [variant, { currency, timeZone }] = await Promise.all([this.variants.get(id), this.workshop.get()]);
    const days = (at: Date): string => dateText(at, timeZone);
    return presentVariant(variant, { forms: { statement, price, listing }, saying: searched(saying), currency, days });
  }

  @Post(':id/statements')
  @Redirect('/', 303)
  async state(@Param('id', IdPipe) id: string, @Body() input: StatementDto): Promise<{ url: string }> {
    await this.variants.state(id, input);
    return { url: await this.flashes.say(urls.variant(id), 'The statement stands beside the others.') };
  }

  @Post(':id/statements/:statementId/withdraw')
  @Redirect('/', 303)
  async withdraw(@Param('statementId', IdPipe) statementId: string): Promise<{ url: string }> {
    const id = await this.variants.withdraw(statementId);
    return { url: await this.flashes.say(urls.variant(id), 'The statement no longer counts; it stays on record.') };
  }

  @Post(':id/price')
  @Redirect('/', 303)
  async reprice(@Param('id', IdPipe) id: string, @Body() input: PriceDto): Promise<{ url: string }> {
    await this.variants.reprice(id, input);
    return { url: await this.flashes.say(urls.variant(id), 'The new price is used from the next order on.') };
  }

  @Post(':id/listings')
  @Redirect('/', 303)
  async addListing(@Param('id', IdPipe) id: string, @Body() input: ListingDto): Promise<{ url: string }> {
    await this.variants.list(id, input);
    return { url: await this.flashes.say(urls.variant(id), `It is listed for ${input.engineCode} now.`) };
  }
}
