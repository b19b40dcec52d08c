import { Injectable } from '@nestjs/common';
import { Clock } from '../../platform/clock.ts';
import { PrismaService } from '../../platform/database.ts';
import { tooManyTries } from './staff.errors.ts';

const WINDOW_MIN = 15;
/** The name from one address: somebody who mistypes. From everywhere: so that nobody else's guessing soon shuts the owner out. */
const MOST = { byNameAndAddress: 8, byName: 40, byAddress: 40 };
/** Kinds of advisory lock, so that a name and an address never meet by their hashes. */
const LOCKS = { name: 7_420_011, address: 7_420_012 };

/**
 * Tries with a secret, counted before the secret is looked at: one that is right is taken back, so that only failures count, and
 * many tries at the same moment get no further than one after another.
 */
@Injectable()
export class SignInAttempts {
  constructor(
    private readonly prisma: PrismaService,
    private readonly clock: Clock,
  ) {}

  /** @param name as typed. @returns the try's id, to be taken back where the secret was right. @throws too-many-tries */
  async begin({ name: typed, from }: { name: string; from: string }): Promise<bigint> {
    const name = typed.toLowerCase();
    const at = this.clock.now();
    const since = new Date(at.getTime() - WINDOW_MIN * 60_000);
    return this.prisma.db.$transaction(
      async (tx) => {
        await tx.$executeRaw`select pg_advisory_xact_lock(${LOCKS.name}::int, hashtext(${name}))`;
        await tx.$executeRaw`select pg_advisory_xact_lock(${LOCKS.address}::int, hashtext(${from}))`;
        const recent = { at: { gt: since } };
        const byNameAndAddress = await tx.signInFailure.count({ where: { name, from, ...recent } });
        const byName = await tx.signInFailure.count({ where: { name, ...recent } });
        const byAddress = await tx.signInFailure.count({ where: { from, ...recent } });
        const isTooOften = byNameAndAddress >= MOST.byNameAndAddress || byName >= MOST.byName || byAddress >= MOST.byAddress;
        if (isTooOften) throw tooManyTries(WINDOW_MIN);
        return (await tx.signInFailure.create({ data: { name, from, at }, select: { id: true } })).id;
      },
      { maxWait: 10_000, timeout: 15_000 },
    );
  }

  /** The secret was right: this try was none. */
  async takeBack(id: bigint): Promise<void> {
    const since = new Date(this.clock.now().getTime() - WINDOW_MIN * 60_000);
    await this.prisma.db.signInFailure.deleteMany({ where: { OR: [{ id }, { at: { lt: since } }] } });
  }
}
