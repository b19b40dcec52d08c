import { Body, Controller, Get, Param, Post, Query, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { Only } from '../../platform/access/access.decorator.ts';
import { cleanText } from '../../platform/clean-text.ts';
import { versionOf } from '../../platform/entity-tag.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { urls } from '../../web/urls.ts';
import { type CounterView, presentCounter } from './counter.presenter.ts';
import { type CustomerFormView, presentCustomerForm } from './customer-form.presenter.ts';
import { type CustomerView, presentCustomer } from './customer.presenter.ts';
import { CustomersService } from './customers.service.ts';
import { CustomerDto } from './dto/customer.dto.ts';
import { VehiclesService } from './vehicles.service.ts';

const FORM = 'customer';

@ApiExcludeController()
@Controller('counter')
@Only('desk', 'owner')
export class CounterController {
  constructor(
    private readonly customers: CustomersService,
    private readonly vehicles: VehiclesService,
    private readonly flashes: Flashes,
  ) {}

  @Get()
  @Render('features/customers/views/counter.hbs')
  async counter(@Query('q') typed: unknown): Promise<CounterView> {
    const words = typeof typed === 'string' ? cleanText(typed).trim().slice(0, 100) : '';
    return presentCounter(words, await this.customers.search(words));
  }

  @Get('customers/new')
  @Render('features/customers/views/customer-form.hbs')
  newCustomer(@FormBack(FORM) form: FormState): CustomerFormView {
    return presentCustomerForm(form, undefined);
  }

  @Post('customers/new')
  @Redirect('/', 303)
  async add(@Body() input: CustomerDto): Promise<{ url: string }> {
    const { id, name } = await this.customers.add(input);
    return { url: await this.flashes.say(urls.customer(id), `${name} is on record.`) };
  }

  @Get('customers/:id')
  @Render('features/customers/views/customer.hbs')
  async customer(@Param('id', IdPipe) id: string): Promise<CustomerView> {
    return presentCustomer(await this.customers.get(id), await this.vehicles.ofCustomer(id));
  }

  @Get('customers/:id/edit')
  @Render('features/customers/views/customer-form.hbs')
  async editCustomer(@Param('id', IdPipe) id: string, @FormBack(FORM) form: FormState): Promise<CustomerFormView> {
    return presentCustomerForm(form, await this.customers.get(id));
  }

  @Post('customers/:id/edit')
  @Redirect('/', 303)
  async change(@Param('id', IdPipe) id: string, @Body() input: CustomerDto): Promise<{ url: string }> {
    await this.customers.change(id, versionOf(input.version), input);
    return { url: await this.flashes.say(urls.customer(id), 'The change is saved.') };
  }
}
