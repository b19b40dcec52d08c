import { createHash } from 'node:crypto';
import { Inject, Injectable, Logger, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { canonicalJson } from './canonical-json.ts';
import { PrismaService } from './database.ts';

/** False in tests, which seal when they mean to. */
export const SEALS_BY_ITSELF = Symbol('SEALS_BY_ITSELF');

const SEALER_LOCK = 7_420_010;
const EVERY_MS = 2_000;
const BATCH = 500;

interface Entry {
  id: bigint;
  at: Date;
  staffId: string | null;
  action: string;
  subject: string;
  subjectId: string;
  before: unknown;
  after: unknown;
  personalHash: string | null;
}

function link(previous: string, entry: Entry): string {
  const facts = [entry.id.toString(), entry.at.toISOString(), entry.staffId, entry.action, entry.subject, entry.subjectId];
  return createHash('sha256')
    .update(previous + canonicalJson([...facts, entry.before, entry.after, entry.personalHash]))
    .digest('hex');
}

/**
 * Chains committed audit rows after the fact, one sealer at a time over all processes, so that no write waits for the chain.
 * Rows that are not yet sealed are counted by `verify`, not hidden.
 */
@Injectable()
export class AuditChain implements OnApplicationBootstrap, OnApplicationShutdown {
  private readonly logger = new Logger('AuditChain');
  private timer: NodeJS.Timeout | undefined;
  private sealing: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly prisma: PrismaService,
    @Inject(SEALS_BY_ITSELF) private readonly sealsByItself: boolean,
  ) {}

  onApplicationBootstrap(): void {
    if (!this.sealsByItself) return;
    this.timer = setInterval(() => {
      this.sealing = this.seal().catch((error: unknown) => this.logger.warn(`Sealing put off: ${String(error)}`));
    }, EVERY_MS).unref();
  }

  async onApplicationShutdown(): Promise<void> {
    clearInterval(this.timer);
    await this.sealing;
  }

  /** @returns how many rows it sealed. */
  async seal(): Promise<number> {
    return this.prisma.db.$transaction(async (tx) => {
      const [lock] = await tx.$queryRaw<[{ taken: boolean }]>`select pg_try_advisory_xact_lock(${SEALER_LOCK}) as taken`;
      if (!lock.taken) return 0;
      const last = await tx.auditSeal.findFirst({ orderBy: { seq: 'desc' } });
      const entries = await tx.auditEntry.findMany({ where: { seal: null }, orderBy: { id: 'asc' }, take: BATCH });
      let hash = last?.hash ?? '';
      let seq = last?.seq ?? 0n;
      const seals = entries.map((entry) => ({ seq: (seq += 1n), entryId: entry.id, hash: (hash = link(hash, entry)) }));
      if (seals.length > 0) await tx.auditSeal.createMany({ data: seals });
      return seals.length;
    });
  }

  /** Walks the chain. @returns the first broken link, if any, and how many rows no seal covers yet. */
  async verify(): Promise<{ sealed: number; unsealed: number; brokenAt: bigint | null }> {
    return this.prisma.db.$transaction(async (tx) => {
      const unsealed = await tx.auditEntry.count({ where: { seal: null } });
      let hash = '';
      let sealed = 0;
      for await (const { seal, entry } of this.walk(tx)) {
        hash = link(hash, entry);
        if (hash !== seal.hash) return { sealed, unsealed, brokenAt: entry.id };
        sealed += 1;
      }
      return { sealed, unsealed, brokenAt: null };
    });
  }

  private async *walk(tx: Tx): AsyncGenerator<{ seal: { hash: string }; entry: Entry }> {
    for (let after = 0n; ;) {
      const page = await tx.auditSeal.findMany({
        where: { seq: { gt: after } },
        orderBy: { seq: 'asc' },
        take: BATCH,
        include: { entry: true },
      });
      for (const seal of page) yield { seal, entry: seal.entry };
      const last = page.at(-1);
      if (!last) return;
      after = last.seq;
    }
  }
}
