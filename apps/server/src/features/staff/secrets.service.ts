import { Injectable } from '@nestjs/common';
import { hash, verify } from '@node-rs/argon2';
import { Audit } from '../../platform/audit.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import type { NewSecretDto } from './dto/new-secret.dto.ts';
import type { OwnPinDto } from './dto/own-pin.dto.ts';
import type { OwnSecretDto } from './dto/own-secret.dto.ts';
import { SignInAttempts } from './sign-in-attempts.service.ts';
import { noPerson, ownSecret, wrongOldSecret } from './staff.errors.ts';
import { type StaffMember, StaffRepository } from './staff.repository.ts';

/** A secret is changed by whoever knows it, or by the owner for somebody who forgot theirs. */
@Injectable()
export class SecretsService {
  constructor(
    private readonly staff: StaffRepository,
    private readonly attempts: SignInAttempts,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
  ) {}

  /** Ends the person's sessions but this one. @throws wrong-old-secret, too-many-tries: whoever finds a screen left open may not guess on it. */
  async changeOwn({ oldSecret, newSecret }: OwnSecretDto, from: string): Promise<void> {
    const { staffId, name, tokenHash } = currentStaff();
    const attempt = await this.attempts.begin({ name, from });
    const known = await this.staff.findSecretHash(staffId);
    if (known === undefined) throw noPerson();
    // A form sent twice finds the new secret in place already.
    if (!(await verify(known, oldSecret)) && !(await verify(known, newSecret))) throw wrongOldSecret();
    await this.attempts.takeBack(attempt);
    await this.set(staffId, { newSecret, but: tokenHash });
  }

  /** @throws wrong-old-secret, too-many-tries */
  async setOwnPin({ oldSecret, pin }: OwnPinDto, from: string): Promise<void> {
    const { staffId, name } = currentStaff();
    const attempt = await this.attempts.begin({ name, from });
    const known = await this.staff.findSecretHash(staffId);
    if (known === undefined || !(await verify(known, oldSecret))) throw wrongOldSecret();
    await this.attempts.takeBack(attempt);
    const pinHash = await hash(pin);
    await this.unitOfWork.run(async (tx) => {
      await this.staff.setPin(tx, staffId, pinHash);
      await this.audit.record(tx, { action: 'set PIN', subject: 'staff', subjectId: staffId });
      return null;
    });
  }

  async person(id: string): Promise<StaffMember> {
    const person = await this.staff.find(id);
    if (!person) throw noPerson();
    return person;
  }

  /** Ends the person's sessions. */
  async giveNew(id: string, { newSecret }: NewSecretDto): Promise<void> {
    if (id === currentStaff().staffId) throw ownSecret();
    await this.person(id);
    await this.set(id, { newSecret });
  }

  private async set(id: string, { newSecret, but }: { newSecret: string; but?: string }): Promise<void> {
    const secretHash = await hash(newSecret);
    await this.unitOfWork.run(async (tx) => {
      await this.staff.setSecret(tx, id, { secretHash, ...(but === undefined ? {} : { but }) });
      await this.audit.record(tx, { action: 'changed secret', subject: 'staff', subjectId: id });
      return null;
    });
  }
}
