import { Injectable } from '@nestjs/common';
import { hash } from '@node-rs/argon2';
import { violatedConstraint } from '#libs/db';
import { Audit } from '../../platform/audit.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import type { NewStaffDto } from './dto/new-staff.dto.ts';
import { lastOwner, nameTaken, noPerson, ownAccount } from './staff.errors.ts';
import { type StaffMember, StaffRepository } from './staff.repository.ts';

/** Who works here; only the owner adds somebody or closes an account. */
@Injectable()
export class PeopleService {
  constructor(
    private readonly staff: StaffRepository,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
  ) {}

  list(): Promise<StaffMember[]> {
    return this.staff.list();
  }

  async add({ name, displayName, role, secret }: NewStaffDto): Promise<void> {
    const secretHash = await hash(secret);
    try {
      await this.unitOfWork.run(async (tx) => {
        const id = await this.staff.create(tx, { name, displayName, role, secretHash });
        await this.audit.record(tx, { action: 'added', subject: 'staff', subjectId: id, after: { role }, personal: { name, displayName } });
        return null;
      });
    } catch (error) {
      if (violatedConstraint(error) === 'staff_name_any_case') throw nameTaken(name);
      throw error;
    }
  }

  /** Closing an account ends its sessions; what the person did stays on record. */
  async setActive(id: string, isActive: boolean): Promise<void> {
    if (!isActive && id === currentStaff().staffId) throw ownAccount();
    await this.unitOfWork.run(async (tx) => {
      const owners = await this.staff.holdActiveOwners(tx);
      if (!(await this.staff.find(id, tx))) throw noPerson();
      if (!isActive && owners.length === 1 && owners[0] === id) throw lastOwner();
      await this.staff.setActive(tx, id, isActive);
      await this.audit.record(tx, { action: isActive ? 'opened' : 'closed', subject: 'staff', subjectId: id });
      return null;
    });
  }
}
