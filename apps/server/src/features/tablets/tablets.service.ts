import { randomInt } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { violatedConstraint } from '#libs/db';
import { hashToken, newToken } from '../../platform/access/tokens.ts';
import { Audit } from '../../platform/audit.ts';
import { Clock } from '../../platform/clock.ts';
import { PrismaService } from '../../platform/database.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { SignInAttempts } from '../staff/sign-in-attempts.service.ts';
import { noTablet, tabletNameTaken, wrongCode } from './tablets.errors.ts';
import type { MissingRun } from './tablet-facts.ts';
import { type StrayRow, type TabletRow, TabletsRepository } from './tablets.repository.ts';

/** No letter that looks like a digit, nor the other way round. */
const LETTERS = 'ABCDEFGHJKMNPQRTUVWXY346789';
const CODE_MIN = 15;
/** Under which failures with codes are counted: no person is called so. */
const BY_CODE = '(tablet code)';

/** Which devices may record for the workshop. */
@Injectable()
export class Tablets {
  constructor(
    private readonly tablets: TabletsRepository,
    private readonly attempts: SignInAttempts,
    private readonly unitOfWork: UnitOfWork,
    private readonly prisma: PrismaService,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  async overview(): Promise<{ tablets: TabletRow[]; strays: StrayRow[]; missing: MissingRun[] }> {
    const [tablets, strays, missing] = await Promise.all([this.tablets.list(), this.tablets.strays(), this.tablets.missing()]);
    return { tablets, strays, missing };
  }

  /** @returns the code that is typed on the tablet within a quarter of an hour, once. */
  async prepare(name: string): Promise<string> {
    const code = Array.from({ length: 8 }, () => LETTERS[randomInt(LETTERS.length)]).join('');
    const now = this.clock.now();
    try {
      return await this.unitOfWork.run(async (tx) => {
        const id = await this.tablets.create(tx, {
          name,
          codeHash: hashToken(code),
          codeUntil: new Date(now.getTime() + CODE_MIN * 60_000),
          createdById: currentStaff().staffId,
          createdAt: now,
        });
        await this.audit.record(tx, { action: 'prepared', subject: 'tablet', subjectId: id, after: { name } });
        return code;
      });
    } catch (error) {
      if (violatedConstraint(error) === 'tablet_name_in_use') throw tabletNameTaken(name);
      throw error;
    }
  }

  /** @returns the device's own token. @throws wrong-code, too-many-tries */
  async enrol(typed: string, from: string): Promise<string> {
    const attempt = await this.attempts.begin({ name: BY_CODE, from });
    const token = newToken();
    const code = typed.toUpperCase().replaceAll(/[^A-Z0-9]/g, '');
    await this.prisma.db.$transaction(async (tx) => {
      const tablet = await this.tablets.enrol(tx, { codeHash: hashToken(code), tokenHash: hashToken(token), at: this.clock.now() });
      if (!tablet) throw wrongCode();
      await this.audit.record(tx, { action: 'enrolled', subject: 'tablet', subjectId: tablet.id });
    });
    await this.attempts.takeBack(attempt);
    return token;
  }

  /** Its token opens nothing any more; what still waits on it is sent once it is enrolled again. */
  async revoke(id: string): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      if (!(await this.tablets.revoke(tx, id, { at: this.clock.now(), byId: currentStaff().staffId }))) throw noTablet();
      await this.audit.record(tx, { action: 'revoked', subject: 'tablet', subjectId: id });
      return null;
    });
  }

  async lookAtStray(id: string): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      if (!(await this.tablets.lookAt(tx, id, { at: this.clock.now(), byId: currentStaff().staffId }))) throw noTablet();
      await this.audit.record(tx, { action: 'looked at', subject: 'tablet stray', subjectId: id });
      return null;
    });
  }
}
