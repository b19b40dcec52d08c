import { Injectable } from '@nestjs/common';
import { type DbClient, ifCurrent, type Tx } from '#libs/db';
import { PrismaService } from '../../platform/database.ts';

export interface Customer {
  id: string;
  number: number;
  name: string;
  kind: string;
  phone: string;
  email: string;
  addressLines: string[];
  postcode: string;
  city: string;
  country: string;
  vatId: string;
  note: string;
  version: number;
}

export type CustomerFields = Omit<Customer, 'id' | 'number' | 'version'>;

export interface CustomerFound {
  id: string;
  name: string;
  phone: string;
  city: string;
  vehicles: { id: string; registration: string; make: string; model: string }[];
}

const FOUND = {
  id: true,
  name: true,
  phone: true,
  city: true,
  vehicles: { select: { id: true, registration: true, make: true, model: true }, orderBy: { createdAt: 'desc' } },
} as const;

@Injectable()
export class CustomersRepository {
  constructor(private readonly prisma: PrismaService) {}

  /** By any part of a name, phone number, town or registration. */
  async search(words: string, most: number): Promise<CustomerFound[]> {
    const contains = { contains: words, mode: 'insensitive' } as const;
    const plate = words.toUpperCase().replaceAll(' ', '');
    return this.prisma.db.customer.findMany({
      where: {
        OR: [
          { name: contains },
          { phone: contains },
          { city: contains },
          { vehicles: { some: { OR: [{ registration: { contains: plate } }, { make: contains }, { model: contains }] } } },
        ],
      },
      orderBy: { name: 'asc' },
      take: most,
      select: FOUND,
    });
  }

  async latest(most: number): Promise<CustomerFound[]> {
    return this.prisma.db.customer.findMany({ orderBy: { number: 'desc' }, take: most, select: FOUND });
  }

  async find(id: string, db: DbClient = this.prisma.db): Promise<Customer | undefined> {
    return (await db.customer.findUnique({ where: { id } })) ?? undefined;
  }

  async create(tx: Tx, fields: CustomerFields): Promise<Customer> {
    return tx.customer.create({ data: fields });
  }

  /** @returns undefined where the version is no longer the current one. */
  async change(tx: Tx, id: string, { version, fields }: { version: number; fields: CustomerFields }): Promise<Customer | undefined> {
    return ifCurrent(tx.customer.update({ where: { id, version }, data: { ...fields, version: { increment: 1 } } }));
  }
}
