import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

/** What an order is made for. */
export interface OrderJob {
  id: string;
  number: number;
  keyTag: number | null;
  stage: string;
  car: string;
  registration: string;
  engineCode: string;
  buildYear: number | null;
  buildMonth: number | null;
}

export interface Order {
  id: string;
  number: number;
  orderedAt: Date;
  orderedById: string;
  expectedOn: Date | null;
  supplier: { id: string; name: string; unopenedOnly: boolean };
  lines: { id: string; quantity: number; priceNet: string; variant: { id: string; partNumber: string; name: string } }[];
}

export interface NewOrder {
  supplierId: string;
  orderedAt: Date;
  orderedById: string;
  expectedOn: Date | null;
}

const MOST = 30;

const ON_THE_PAGE = {
  supplier: { select: { id: true, name: true, unopenedOnly: true } },
  lines: { orderBy: { id: 'asc' }, include: { variant: { select: { id: true, partNumber: true, name: true } } } },
} as const;

@Injectable()
export class OrdersRepository {
  constructor(private readonly prisma: PrismaService) {}

  async job(id: string): Promise<OrderJob | undefined> {
    const row = await this.prisma.db.job.findUnique({ where: { id }, include: { vehicle: true } });
    if (!row) return undefined;
    const { registration, make, model, engineCode, buildYear, buildMonth } = row.vehicle;
    const { number, keyTag, stage } = row;
    return { id, number, keyTag, stage, car: `${make} ${model}`, registration, engineCode, buildYear, buildMonth };
  }

  async recent(): Promise<Order[]> {
    return this.many({});
  }

  async find(id: string): Promise<Order | undefined> {
    return (await this.many({ id }))[0];
  }

  private async many(where: object): Promise<Order[]> {
    const rows = await this.prisma.db.purchaseOrder.findMany({ where, include: ON_THE_PAGE, orderBy: { number: 'desc' }, take: MOST });
    return rows.map(({ lines, ...row }) => ({ ...row, lines: lines.map((line) => ({ ...line, priceNet: line.priceNet.toFixed(2) })) }));
  }

  async create(tx: Tx, order: NewOrder): Promise<{ id: string; number: number }> {
    return tx.purchaseOrder.create({ data: order, select: { id: true, number: true } });
  }

  async addLine(tx: Tx, line: { orderId: string; variantId: string; quantity: number; priceNet: string }): Promise<string> {
    return (await tx.orderLine.create({ data: line, select: { id: true } })).id;
  }
}
