import { Injectable } from '@nestjs/common';
import { type DbClient, ifCurrent, type Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

export interface Vehicle {
  id: string;
  customerId: string;
  registration: string;
  vin: string | null;
  make: string;
  model: string;
  engineCode: string;
  buildYear: number | null;
  buildMonth: number | null;
  thermostatKind: string;
  note: string;
  version: number;
}

export type VehicleFields = Omit<Vehicle, 'id' | 'customerId' | 'version'>;

export interface VehicleHistory extends Vehicle {
  customer: { id: string; name: string };
  jobs: { id: string; number: number; stage: string; complaint: string; createdAt: Date; template: { name: string } }[];
}

@Injectable()
export class VehiclesRepository {
  constructor(private readonly prisma: PrismaService) {}

  async ofCustomer(customerId: string): Promise<Vehicle[]> {
    return this.prisma.db.vehicle.findMany({ where: { customerId }, orderBy: { createdAt: 'desc' } });
  }

  async find(id: string, db: DbClient = this.prisma.db): Promise<Vehicle | undefined> {
    return (await db.vehicle.findUnique({ where: { id } })) ?? undefined;
  }

  async withHistory(id: string): Promise<VehicleHistory | undefined> {
    const row = await this.prisma.db.vehicle.findUnique({
      where: { id },
      include: {
        customer: { select: { id: true, name: true } },
        jobs: {
          orderBy: { number: 'desc' },
          select: { id: true, number: true, stage: true, complaint: true, createdAt: true, template: { select: { name: true } } },
        },
      },
    });
    return row ?? undefined;
  }

  async create(tx: Tx, customerId: string, fields: VehicleFields): Promise<Vehicle> {
    return tx.vehicle.create({ data: { ...fields, customerId } });
  }

  /** @returns undefined where the version is no longer the current one. */
  async change(tx: Tx, id: string, { version, fields }: { version: number; fields: VehicleFields }): Promise<Vehicle | undefined> {
    return ifCurrent(tx.vehicle.update({ where: { id, version }, data: { ...fields, version: { increment: 1 } } }));
  }
}
