import { Injectable } from '@nestjs/common';
import { hash } from '@node-rs/argon2';
import { Audit } from '../../platform/audit.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import type { FirstOwnerDto } from './dto/first-owner.dto.ts';
import { alreadyOwned } from './staff.errors.ts';
import { StaffRepository } from './staff.repository.ts';

/** A workshop that nobody has set up yet gets its name and its owner, once. */
@Injectable()
export class FirstOwnerService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly staff: StaffRepository,
    private readonly workshop: WorkshopFacts,
    private readonly audit: Audit,
  ) {}

  async isNeeded(): Promise<boolean> {
    return (await this.workshop.find()) === undefined;
  }

  async setUp(input: FirstOwnerDto): Promise<void> {
    const secretHash = await hash(input.secret);
    await this.unitOfWork.run(async (tx) => {
      // The workshop's single row is the lock: the second of two simultaneous owners fails on its key.
      const made = await tx.workshop.createMany({
        data: { id: 1, name: input.workshopName, timeZone: input.timeZone, currency: input.currency, country: input.country },
        skipDuplicates: true,
      });
      if (made.count === 0) throw alreadyOwned();
      const id = await this.staff.create(tx, { name: input.name, displayName: input.displayName, role: 'owner', secretHash });
      await this.audit.record(tx, { action: 'set up', subject: 'workshop', subjectId: '1', after: { owner: id } });
      return null;
    });
  }
}
