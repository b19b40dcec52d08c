import { Body, Controller, Get, Param, Post, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { Only } from '../../platform/access/access.decorator.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { plainDate } from '../../web/dates.ts';
import { urls } from '../../web/urls.ts';
import { Units } from '../returns/units.service.ts';
import { GoodsInDto, OddArrivalDto, OrderDto } from './dto/order.dto.ts';
import { type OrderFormView, presentOrderForm } from './order-form.presenter.ts';
import { type OrdersView, type OrderView, presentOrder, presentOrders } from './orders.presenter.ts';
import { Orders } from './orders.service.ts';
import { Variants } from './variants.service.ts';

@ApiExcludeController()
@Controller('parts-bench/orders')
@Only('desk', 'owner')
export class OrdersController {
  constructor(
    private readonly orders: Orders,
    private readonly variants: Variants,
    private readonly units: Units,
    private readonly workshop: WorkshopFacts,
    private readonly flashes: Flashes,
  ) {}

  @Get()
  @Render('features/purchasing/views/orders.hbs')
  async list(@FormBack('goods-in') goodsIn: FormState): Promise<OrdersView> {
    const [due, orders, place] = await Promise.all([this.units.at(['expected']), this.orders.recent(), this.workshop.get()]);
    return presentOrders(goodsIn, { due, orders, place });
  }

  @Post('goods-in')
  @Redirect('/', 303)
  async goodsIn(@Body() { code }: GoodsInDto): Promise<{ url: string }> {
    const id = await this.orders.goodsIn(code);
    return { url: await this.flashes.say(urls.orders, await this.arrivalWords(id)) };
  }

  @Post('units/:id/came')
  @Redirect('/', 303)
  async came(@Param('id', IdPipe) id: string): Promise<{ url: string }> {
    await this.orders.arrived(id);
    return { url: await this.flashes.say(urls.orders, await this.arrivalWords(id)) };
  }

  @Post('units/:id/called-off')
  @Redirect('/', 303)
  async calledOff(@Param('id', IdPipe) id: string): Promise<{ url: string }> {
    await this.orders.notComing(id, 'called-off');
    return { url: await this.flashes.say(urls.orders, 'The piece is called off: tell the supplier.') };
  }

  @Post('units/:id/never-came')
  @Redirect('/', 303)
  async neverCame(@Param('id', IdPipe) id: string): Promise<{ url: string }> {
    await this.orders.notComing(id, 'never-came');
    return { url: await this.flashes.say(urls.orders, 'The piece never came: nothing is charged for it here.') };
  }

  @Get('jobs/:jobId/new')
  @Render('features/purchasing/views/order-form.hbs')
  async ask(@Param('jobId', IdPipe) jobId: string, @FormBack('order') order: FormState): Promise<OrderFormView> {
    const job = await this.orders.job(jobId);
    const [variants, units, { currency }] = await Promise.all([this.variants.listedFor(job), this.units.ofJob(jobId), this.workshop.get()]);
    const stocked = await this.units.stocked(variants.map(({ id }) => id));
    return presentOrderForm(order, { job, variants, units, stocked, currency });
  }

  @Post('jobs/:jobId/new')
  @Redirect('/', 303)
  async make(@Param('jobId', IdPipe) jobId: string, @Body() input: OrderDto): Promise<{ url: string }> {
    const { orders, pieces } = await this.orders.make(jobId, input);
    const numbers = orders.map(({ number }) => number).join(' and ');
    const words = `${pieces} ${pieces === 1 ? 'piece is' : 'pieces are'} on order: ${orders.length === 1 ? 'order' : 'orders'} ${numbers}.`;
    return { url: await this.flashes.say(urls.jobParts(jobId), words) };
  }

  @Post('jobs/:jobId/stock/:unitId')
  @Redirect('/', 303)
  async takeFromStock(@Param('jobId', IdPipe) jobId: string, @Param('unitId', IdPipe) unitId: string): Promise<{ url: string }> {
    await this.orders.takeFromStock(jobId, unitId);
    return { url: await this.flashes.say(urls.jobParts(jobId), 'It is set aside for this job, out of stock.') };
  }

  @Get(':id')
  @Render('features/purchasing/views/order.hbs')
  async order(@Param('id', IdPipe) id: string, @FormBack('beside') beside: FormState): Promise<OrderView> {
    const order = await this.orders.get(id);
    const [units, theirs, names, place] = await Promise.all([
      this.units.ofOrder(id),
      this.variants.ofSupplier(order.supplier.id),
      this.units.staffNames(),
      this.workshop.get(),
    ]);
    return presentOrder(beside, { order, units, theirs, who: names.get(order.orderedById) ?? 'somebody', place });
  }

  @Post(':id/beside')
  @Redirect('/', 303)
  async beside(@Param('id', IdPipe) id: string, @Body() input: OddArrivalDto): Promise<{ url: string }> {
    const unitId = await this.orders.oddArrival(id, input);
    return { url: await this.flashes.say(urls.order(id), await this.arrivalWords(unitId)) };
  }

  private async arrivalWords(id: string): Promise<string> {
    const unit = await this.units.get(id);
    const { whose } = unit;
    const back = unit.returnBy === null ? '' : `, back by ${plainDate(unit.returnBy)}`;
    const shut = unit.variant.supplier.unopenedOnly
      ? ` Leave its box shut: ${unit.variant.supplier.name} takes back unopened boxes only.`
      : '';
    return `${unit.label}, ${unit.variant.partNumber}, is set aside${whose === '' ? '' : ` for ${whose}`}${back}.${shut}`;
  }
}
