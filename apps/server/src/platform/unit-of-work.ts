import { Injectable } from '@nestjs/common';
import { isWriteConflict, Prisma, type Tx, violatedConstraint } from '#libs/db';
import { Clock } from './clock.ts';
import { PrismaService } from './database.ts';
import { DomainError } from './domain-error.ts';
import { requestContext, type RequestContext, type RequestKey } from './request-context.ts';

const ATTEMPTS = 5;
/** Requests whose key is in use or was used: a second change under it would be taken for a repeat of the first and left undone. */
const used = new WeakSet<RequestContext>();

/**
 * One state change, once. The request's key is written in the same transaction as what it changes, so that a repeat (a second
 * click, a retry after a lost answer, the same instant on another process) gets the first result and changes nothing.
 * A refused or failed change rolls its key back with it: the corrected form may use it again.
 */
@Injectable()
export class UnitOfWork {
  constructor(
    private readonly prisma: PrismaService,
    private readonly clock: Clock,
  ) {}

  /** @param work must return what the answer is made of, as JSON: a repeat is answered from it. */
  async run<T extends Prisma.InputJsonValue | null>(work: (tx: Tx) => Promise<T>): Promise<T> {
    const request = requestContext.getStore();
    if (!request?.requestKey) return this.attempt(undefined, work);
    if (used.has(request)) throw new Error('One request, one unit of work: do all of its changes in one transaction');
    used.add(request);
    try {
      return await this.attempt(request.requestKey, work);
    } catch (error) {
      used.delete(request); // nothing was kept, the key is free
      throw error;
    }
  }

  private async attempt<T extends Prisma.InputJsonValue | null>(
    requestKey: RequestKey | undefined,
    work: (tx: Tx) => Promise<T>,
  ): Promise<T> {
    for (let attempt = 1; ; attempt += 1) {
      try {
        const known = requestKey && (await this.known(requestKey));
        if (known) return known.result as T;
        return await this.once(requestKey, work);
      } catch (error) {
        const lostRace = requestKey !== undefined && violatedConstraint(error) === 'idempotency_key_pkey';
        if (attempt >= ATTEMPTS || !(lostRace || isWriteConflict(error))) throw error;
        await new Promise((resolve) => setTimeout(resolve, 10 * 2 ** attempt));
      }
    }
  }

  private async known({ scope, key, route, bodyHash }: RequestKey): Promise<{ result: Prisma.JsonValue } | undefined> {
    const row = await this.prisma.db.idempotencyKey.findUnique({ where: { scope_key: { scope, key } } });
    if (!row) return undefined;
    if (row.route === route && row.bodyHash === bodyHash) return { result: row.result };
    throw new DomainError(
      'impossible',
      'key-used',
      'This form was already saved with other values. What was saved stands; open it again to change it.',
    );
  }

  private once<T extends Prisma.InputJsonValue | null>(requestKey: RequestKey | undefined, work: (tx: Tx) => Promise<T>): Promise<T> {
    return this.prisma.db.$transaction(
      async (tx) => {
        if (!requestKey) return work(tx);
        const at = this.clock.now();
        // Claimed first: a simultaneous repeat waits here, then fails on the key and is answered from this row.
        await tx.$executeRaw`insert into idempotency_key (scope, key, route, body_hash, result, at)
          values (${requestKey.scope}, ${requestKey.key}, ${requestKey.route}, ${requestKey.bodyHash}, 'null', ${at})`;
        const result = await work(tx);
        await tx.idempotencyKey.update({
          where: { scope_key: { scope: requestKey.scope, key: requestKey.key } },
          data: { result: result ?? Prisma.JsonNull },
        });
        return result;
      },
      { maxWait: 5_000, timeout: 15_000 },
    );
  }
}
