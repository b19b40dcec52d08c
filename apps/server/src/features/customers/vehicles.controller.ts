import { Body, Controller, Get, Param, Post, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { Only } from '../../platform/access/access.decorator.ts';
import { versionOf } from '../../platform/entity-tag.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { urls } from '../../web/urls.ts';
import { CustomersService } from './customers.service.ts';
import { VehicleDto } from './dto/vehicle.dto.ts';
import { presentVehicleForm, type VehicleFormView } from './vehicle-form.presenter.ts';
import { presentVehicle, type VehicleView } from './vehicle.presenter.ts';
import { VehiclesService } from './vehicles.service.ts';

const FORM = 'vehicle';

@ApiExcludeController()
@Controller('counter')
@Only('desk', 'owner')
export class VehiclesController {
  constructor(
    private readonly vehicles: VehiclesService,
    private readonly customers: CustomersService,
    private readonly workshop: WorkshopFacts,
    private readonly flashes: Flashes,
  ) {}

  @Get('customers/:customerId/vehicles/new')
  @Render('features/customers/views/vehicle-form.hbs')
  async newVehicle(@Param('customerId', IdPipe) customerId: string, @FormBack(FORM) form: FormState): Promise<VehicleFormView> {
    return presentVehicleForm(form, { customer: await this.customers.get(customerId), vehicle: undefined });
  }

  @Post('customers/:customerId/vehicles/new')
  @Redirect('/', 303)
  async add(@Param('customerId', IdPipe) customerId: string, @Body() input: VehicleDto): Promise<{ url: string }> {
    const id = await this.vehicles.add(customerId, input);
    return { url: await this.flashes.say(urls.vehicle(id), 'The vehicle is on record.') };
  }

  @Get('vehicles/:id')
  @Render('features/customers/views/vehicle.hbs')
  async vehicle(@Param('id', IdPipe) id: string): Promise<VehicleView> {
    const [vehicle, { timeZone }] = await Promise.all([this.vehicles.withHistory(id), this.workshop.get()]);
    return presentVehicle(vehicle, timeZone);
  }

  @Get('vehicles/:id/edit')
  @Render('features/customers/views/vehicle-form.hbs')
  async editVehicle(@Param('id', IdPipe) id: string, @FormBack(FORM) form: FormState): Promise<VehicleFormView> {
    const vehicle = await this.vehicles.get(id);
    return presentVehicleForm(form, { customer: await this.customers.get(vehicle.customerId), vehicle });
  }

  @Post('vehicles/:id/edit')
  @Redirect('/', 303)
  async change(@Param('id', IdPipe) id: string, @Body() input: VehicleDto): Promise<{ url: string }> {
    await this.vehicles.change(id, versionOf(input.version), input);
    return { url: await this.flashes.say(urls.vehicle(id), 'The change is saved.') };
  }
}
