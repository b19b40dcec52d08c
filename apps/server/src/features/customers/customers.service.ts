import { Injectable } from '@nestjs/common';
import { Audit } from '../../platform/audit.ts';
import { MOST_ROWS } from '../../platform/paging.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { changedMeanwhile, noCustomer } from './customers.errors.ts';
import { type Customer, type CustomerFields, type CustomerFound, CustomersRepository } from './customers.repository.ts';
import type { CustomerDto } from './dto/customer.dto.ts';

function fieldsOf({ address, name, kind, phone, email, postcode, city, country, vatId, note }: CustomerDto): CustomerFields {
  const addressLines = address
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
  return { name, kind, phone, email, addressLines, postcode, city, country, vatId, note };
}

@Injectable()
export class CustomersService {
  constructor(
    private readonly customers: CustomersRepository,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
  ) {}

  search(words: string): Promise<CustomerFound[]> {
    return words === '' ? this.customers.latest(MOST_ROWS) : this.customers.search(words, MOST_ROWS);
  }

  async get(id: string): Promise<Customer> {
    const customer = await this.customers.find(id);
    if (!customer) throw noCustomer();
    return customer;
  }

  async add(input: CustomerDto): Promise<Customer> {
    return this.unitOfWork.run(async (tx) => {
      const customer = await this.customers.create(tx, fieldsOf(input));
      await this.audit.record(tx, { action: 'added', subject: 'customer', subjectId: customer.id, personal: { after: fieldsOf(input) } });
      return plain(customer);
    });
  }

  /** @throws changed-meanwhile where `version` is no longer the current one. */
  async change(id: string, version: number, input: CustomerDto): Promise<Customer> {
    return this.unitOfWork.run(async (tx) => {
      const before = await this.customers.find(id, tx);
      if (!before) throw noCustomer();
      const after = await this.customers.change(tx, id, { version, fields: fieldsOf(input) });
      if (!after) throw changedMeanwhile('customer');
      await this.audit.record(tx, {
        action: 'changed',
        subject: 'customer',
        subjectId: id,
        personal: { before: plain(before), after: plain(after) },
      });
      return plain(after);
    });
  }
}

/** The row as the JSON that a repeat of the request is answered from. */
function plain({ id, number, name, kind, phone, email, addressLines, postcode, city, country, vatId, note, version }: Customer) {
  return { id, number, name, kind, phone, email, addressLines, postcode, city, country, vatId, note, version };
}
