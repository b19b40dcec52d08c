import { Body, Controller, Get, Param, Post, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { Only } from '../../platform/access/access.decorator.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { urls } from '../../web/urls.ts';
import { SupplierDto } from './dto/supplier.dto.ts';
import { presentSupplierForm, presentSuppliers, type SupplierFormView, type SuppliersView } from './suppliers.presenter.ts';
import { SuppliersService } from './suppliers.service.ts';

const FORM = 'supplier';

@ApiExcludeController()
@Controller('parts-bench/orders/suppliers')
@Only('desk', 'owner')
export class SuppliersController {
  constructor(
    private readonly suppliers: SuppliersService,
    private readonly workshop: WorkshopFacts,
    private readonly flashes: Flashes,
  ) {}

  @Get()
  @Render('features/purchasing/views/suppliers.hbs')
  async list(): Promise<SuppliersView> {
    const [suppliers, { currency }] = await Promise.all([this.suppliers.all(), this.workshop.get()]);
    return presentSuppliers(suppliers, currency);
  }

  @Get('new')
  @Render('features/purchasing/views/supplier-form.hbs')
  async askNew(@FormBack(FORM) form: FormState): Promise<SupplierFormView> {
    const { currency } = await this.workshop.get();
    return presentSupplierForm(form, { supplier: undefined, currency });
  }

  @Post('new')
  @Redirect('/', 303)
  async add(@Body() input: SupplierDto): Promise<{ url: string }> {
    await this.suppliers.add(input);
    return { url: await this.flashes.say(urls.suppliers, `${input.name} is on record.`) };
  }

  @Get(':id/edit')
  @Render('features/purchasing/views/supplier-form.hbs')
  async askChange(@Param('id', IdPipe) id: string, @FormBack(FORM) form: FormState): Promise<SupplierFormView> {
    const [supplier, { currency }] = await Promise.all([this.suppliers.get(id), this.workshop.get()]);
    return presentSupplierForm(form, { supplier, currency });
  }

  @Post(':id/edit')
  @Redirect('/', 303)
  async change(@Param('id', IdPipe) id: string, @Body() input: SupplierDto): Promise<{ url: string }> {
    await this.suppliers.change(id, Number(input.version), input);
    return { url: await this.flashes.say(urls.suppliers, `The terms of ${input.name} are saved.`) };
  }
}
