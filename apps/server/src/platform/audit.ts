import { randomBytes } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { Prisma, Tx } from '#libs/db';
import { Clock } from './clock.ts';
import { personalHash } from './personal-hash.ts';
import { requestContext } from './request-context.ts';

export interface AuditFacts {
  /** A verb in the past: 'added', 'changed', 'issued'. */
  action: string;
  subject: string;
  subjectId: string;
  before?: Prisma.InputJsonValue;
  after?: Prisma.InputJsonValue;
  /** Names, addresses and the like: kept apart, so that they can be erased without breaking the chain. */
  personal?: Prisma.InputJsonObject;
}

/** Who did what: a row in the transaction that did it. */
@Injectable()
export class Audit {
  constructor(private readonly clock: Clock) {}

  async record(tx: Tx, { action, subject, subjectId, before, after, personal }: AuditFacts): Promise<void> {
    const salt = randomBytes(16).toString('hex');
    await tx.auditEntry.create({
      data: {
        at: this.clock.now(),
        staffId: requestContext.getStore()?.staff?.staffId ?? null,
        action,
        subject,
        subjectId,
        ...(before === undefined ? {} : { before }),
        ...(after === undefined ? {} : { after }),
        ...(personal ? { personalHash: personalHash(salt, personal), personal: { create: { salt, values: personal } } } : {}),
      },
    });
  }
}
