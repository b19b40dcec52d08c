import { Injectable } from '@nestjs/common';
import { violatedConstraint } from '#libs/db';
import { Audit } from '../../platform/audit.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import type { SupplierDto } from './dto/supplier.dto.ts';
import { changedMeanwhile, noSupplier, supplierTaken } from './purchasing.errors.ts';
import { type Supplier, type SupplierFields, SuppliersRepository } from './suppliers.repository.ts';

const decimal = (typed: string): string => typed.replace(',', '.');

function fieldsOf(input: SupplierDto): SupplierFields {
  const { name, phone, email, accountNumber, windowStart } = input;
  return {
    name,
    phone,
    email,
    accountNumber,
    windowStart,
    returnDays: Number(input.returnDays),
    restockingPct: decimal(input.restockingPct),
    returnCarriage: decimal(input.returnCarriage),
    carriage: decimal(input.carriage),
    unopenedOnly: input.unopenedOnly === 'on',
    daysToCredit: Number(input.daysToCredit),
  };
}

/** Terms in force from now on: a unit that is here already keeps the last day it was given. */
@Injectable()
export class SuppliersService {
  constructor(
    private readonly suppliers: SuppliersRepository,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
  ) {}

  all(): Promise<Supplier[]> {
    return this.suppliers.all();
  }

  async get(id: string): Promise<Supplier> {
    const supplier = await this.suppliers.find(id);
    if (!supplier) throw noSupplier();
    return supplier;
  }

  async add(input: SupplierDto): Promise<void> {
    const fields = fieldsOf(input);
    await this.withName(fields.name, () =>
      this.unitOfWork.run(async (tx) => {
        const id = await this.suppliers.create(tx, fields);
        await this.audit.record(tx, { action: 'added', subject: 'supplier', subjectId: id, after: { ...fields } });
        return null;
      }),
    );
  }

  async change(id: string, version: number, input: SupplierDto): Promise<void> {
    const fields = fieldsOf(input);
    await this.withName(fields.name, () =>
      this.unitOfWork.run(async (tx) => {
        const before = await this.suppliers.find(id, tx);
        if (!before) throw noSupplier();
        const after = await this.suppliers.change(tx, id, { version, fields });
        if (!after) throw changedMeanwhile('supplier');
        await this.audit.record(tx, { action: 'changed', subject: 'supplier', subjectId: id, before: { ...before }, after: { ...after } });
        return null;
      }),
    );
  }

  private async withName(name: string, save: () => Promise<unknown>): Promise<void> {
    try {
      await save();
    } catch (error) {
      if (violatedConstraint(error) === 'supplier_name_key') throw supplierTaken(name);
      throw error;
    }
  }
}
