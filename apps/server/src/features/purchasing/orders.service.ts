import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { Audit } from '../../platform/audit.ts';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { dayColumn } from '../../web/dates.ts';
import { SetAsideRelease } from '../returns/set-aside-release.service.ts';
import { Units } from '../returns/units.service.ts';
import type { OddArrivalDto, OrderDto } from './dto/order.dto.ts';
import { type Order, type OrderJob, OrdersRepository } from './orders.repository.ts';
import { PartWait } from './part-wait.service.ts';
import { jobIsOver, noJob, noOrder, nothingToOrder, notExpected, notInStock, notOnTheList } from './purchasing.errors.ts';
import type { Variant } from './variants.repository.ts';
import { Variants } from './variants.service.ts';

export interface Made {
  orders: { id: string; number: number }[];
  pieces: number;
}

const OVER = new Set(['keys-out', 'squared', 'fell-through']);

@Injectable()
export class Orders {
  constructor(
    private readonly orders: OrdersRepository,
    private readonly variants: Variants,
    private readonly units: Units,
    private readonly release: SetAsideRelease,
    private readonly wait: PartWait,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  recent(): Promise<Order[]> {
    return this.orders.recent();
  }

  async get(id: string): Promise<Order> {
    const order = await this.orders.find(id);
    if (!order) throw noOrder();
    return order;
  }

  async job(id: string): Promise<OrderJob> {
    const job = await this.orders.job(id);
    if (!job) throw noJob();
    return job;
  }

  /** One order per supplier, one expected piece per variant, each with its own code from the start. */
  async make(jobId: string, { variants: ids, expectedOn }: OrderDto): Promise<Made> {
    const job = await this.job(jobId);
    if (OVER.has(job.stage)) throw jobIsOver();
    const wanted = [...new Set(ids)];
    if (wanted.length === 0) throw nothingToOrder();
    const variants = await this.variants.byIds(wanted);
    if (variants.length !== wanted.length) throw notOnTheList('variants');
    const day = expectedOn === undefined || expectedOn === '' ? null : dayColumn(expectedOn);
    if (day === undefined) throw notOnTheList('expectedOn');
    const supplierIds = new Set(variants.map(({ supplier }) => supplier.id));
    return this.unitOfWork.run(async (tx) => {
      const who = [...new Set(variants.map(({ supplier }) => supplier.name))].join(', ');
      await this.wait.begin(tx, jobId, { who, until: expectedOn === '' ? null : (expectedOn ?? null) });
      const orders: Made['orders'] = [];
      for (const supplierId of supplierIds) {
        const theirs = variants.filter(({ supplier }) => supplier.id === supplierId);
        orders.push(await this.order(tx, { jobId, supplierId, variants: theirs, day }));
      }
      return { orders, pieces: variants.length };
    });
  }

  private async order(
    tx: Tx,
    { jobId, supplierId, variants, day }: { jobId: string; supplierId: string; variants: readonly Variant[]; day: Date | null },
  ): Promise<{ id: string; number: number }> {
    const order = await this.orders.create(tx, {
      supplierId,
      orderedAt: this.clock.now(),
      orderedById: currentStaff().staffId,
      expectedOn: day,
    });
    for (const { id: variantId, priceNet } of variants) {
      const orderLineId = await this.orders.addLine(tx, { orderId: order.id, variantId, quantity: 1, priceNet });
      await this.units.make(tx, { variantId, orderLineId, arrivalReason: 'ordered', jobId });
    }
    const after = { number: order.number, job: jobId, variants: variants.map(({ partNumber }) => partNumber) };
    await this.audit.record(tx, { action: 'ordered', subject: 'purchase order', subjectId: order.id, after });
    return order;
  }

  /** From our own shelf: no order, and its cost goes with it. */
  async takeFromStock(jobId: string, unitId: string): Promise<void> {
    const job = await this.job(jobId);
    if (OVER.has(job.stage)) throw jobIsOver();
    await this.unitOfWork.run(async (tx) => {
      const unit = await this.units.hold(tx, unitId);
      if (unit.place !== 'stocked') throw notInStock(unit);
      await this.units.assign(tx, unit, job);
      await this.units.move(tx, unit, { to: 'set-aside', why: `From stock for job ${job.number}` });
      return null;
    });
  }

  /** @returns the id of what came. */
  async goodsIn(typed: string): Promise<string> {
    const unit = await this.units.byTypedCode(typed);
    await this.arrived(unit.id);
    return unit.id;
  }

  async arrived(unitId: string): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      const unit = await this.units.hold(tx, unitId);
      if (unit.place !== 'expected') throw notExpected(unit);
      await this.units.arrive(tx, unitId);
      if (unit.job) {
        await this.wait.endIfAllCame(tx, unit.job.id);
        await this.release.release(tx, unit.job.id);
      }
      return null;
    });
  }

  /** Nothing of it will come: cancelled by us, or never delivered. */
  async notComing(unitId: string, to: 'called-off' | 'never-came'): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      const unit = await this.units.hold(tx, unitId);
      if (unit.place !== 'expected') throw notExpected(unit);
      await this.units.move(tx, unit, { to });
      if (unit.job) await this.wait.endIfAllCame(tx, unit.job.id);
      return null;
    });
  }

  /** A piece beside the order: on the shelf under its own reason, it answers no line. @returns its id. */
  async oddArrival(orderId: string, { variantId, reason }: OddArrivalDto): Promise<string> {
    const [order, variant, units] = await Promise.all([this.get(orderId), this.variants.get(variantId), this.units.ofOrder(orderId)]);
    if (variant.supplier.id !== order.supplier.id) throw notOnTheList('variantId');
    const jobId = units[0]?.job?.id ?? null;
    return this.unitOfWork.run(async (tx) => {
      const id = await this.units.make(tx, { variantId, orderLineId: null, arrivalReason: reason, jobId });
      await this.units.arrive(tx, id);
      if (jobId !== null) await this.release.release(tx, jobId);
      return id;
    });
  }
}
