import { createHash } from 'node:crypto';
import { Injectable, type OnApplicationBootstrap } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { canonicalJson } from './canonical-json.ts';
import { PrismaService } from './database.ts';
import { personalHash } from './personal-hash.ts';
import { Rounds } from './rounds.ts';

const SEALER_LOCK = 7_420_010;
const EVERY_MS = 2_000;
const BATCH = 500;
/** So many rows may be recorded while one slow transaction is under way. */
const SLOW_ROWS = 1_000n;
const VERIFY_MS = 60_000;

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

interface Personal {
  salt: string;
  values: unknown;
}

function link(previous: string, entry: Entry): string {
  const facts = [entry.id.toString(), entry.at.toISOString(), entry.staffId, entry.action, entry.subject, entry.subjectId];
  return createHash('sha256')
    .update(previous + canonicalJson([...facts, entry.before, entry.after, entry.personalHash]))
    .digest('hex');
}

/**
 * Chains committed audit rows after the fact, one sealer at a time over all processes, so that no write waits for the chain.
 * Rows that are not yet sealed are counted, not hidden.
 */
@Injectable()
export class AuditChain implements OnApplicationBootstrap {
  constructor(
    private readonly prisma: PrismaService,
    private readonly rounds: Rounds,
  ) {}

  onApplicationBootstrap(): void {
    this.rounds.every(EVERY_MS, 'Sealing', () => this.seal());
  }

  /** @returns how many rows it sealed. */
  async seal(): Promise<number> {
    return this.prisma.db.$transaction(async (tx) => {
      const [lock] = await tx.$queryRaw<[{ taken: boolean }]>`select pg_try_advisory_xact_lock(${SEALER_LOCK}) as taken`;
      if (!lock.taken) return 0;
      const last = await tx.auditSeal.findFirst({ orderBy: { seq: 'desc' } });
      const from = await sealedFrom(tx);
      const rows = await tx.$queryRaw<{ id: bigint }[]>`
        select e.id from audit_entry e where e.id > ${from}
          and not exists (select 1 from audit_seal s where s.entry_id = e.id and s.entry_id > ${from})
        order by e.id limit ${BATCH}`;
      const entries = await tx.auditEntry.findMany({ where: { id: { in: rows.map(({ id }) => id) } }, orderBy: { id: 'asc' } });
      let hash = last?.hash ?? '';
      let seq = last?.seq ?? 0n;
      const seals = entries.map((entry) => ({ seq: (seq += 1n), entryId: entry.id, hash: (hash = link(hash, entry)) }));
      if (seals.length > 0) await tx.auditSeal.createMany({ data: seals });
      return seals.length;
    });
  }

  /** How long the chain is and how many of the newest rows it does not cover yet: cheap, and no proof of anything. */
  async state(): Promise<{ sealed: number; unsealed: number }> {
    return this.prisma.db.$transaction(async (tx) => {
      const from = await sealedFrom(tx);
      const [counts] = await tx.$queryRaw<[{ sealed: bigint; unsealed: bigint }]>`
        select coalesce((select max(seq) from audit_seal), 0) as sealed, count(*) as unsealed from audit_entry e
        where e.id > ${from} and not exists (select 1 from audit_seal s where s.entry_id = e.id and s.entry_id > ${from})`;
      return { sealed: Number(counts.sealed), unsealed: Number(counts.unsealed) };
    });
  }

  /**
   * Walks the whole chain, for whoever asks for the proof: not on every view of a page.
   *
   * @returns the first row that is not as it was sealed, or whose personal values are not those it was recorded with, and how many
   * rows no seal covers. Personal values that were erased break nothing.
   */
  async verify(): Promise<{ sealed: number; unsealed: number; brokenAt: bigint | null }> {
    return this.prisma.db.$transaction(
      async (tx) => {
        const unsealed = await tx.auditEntry.count({ where: { seal: null } });
        let hash = '';
        let sealed = 0;
        for await (const { seal, entry } of this.walk(tx)) {
          hash = link(hash, entry);
          if (hash !== seal.hash || !isPersonalAsRecorded(entry)) return { sealed, unsealed, brokenAt: entry.id };
          sealed += 1;
        }
        return { sealed, unsealed, brokenAt: null };
      },
      { timeout: VERIFY_MS, isolationLevel: 'RepeatableRead' },
    );
  }

  private async *walk(tx: Tx): AsyncGenerator<{ seal: { hash: string }; entry: Entry & { personal: Personal | null } }> {
    for (let after = 0n; ;) {
      const page = await tx.auditSeal.findMany({
        where: { seq: { gt: after } },
        orderBy: { seq: 'asc' },
        take: BATCH,
        include: { entry: { include: { personal: true } } },
      });
      for (const seal of page) yield { seal, entry: seal.entry };
      const last = page.at(-1);
      if (!last) return;
      after = last.seq;
    }
  }
}

/** Where unsealed rows can begin: a transaction that was slow to commit has a lower number than rows sealed before it. */
async function sealedFrom(tx: Tx): Promise<bigint> {
  const { _max } = await tx.auditSeal.aggregate({ _max: { entryId: true } });
  return (_max.entryId ?? 0n) - SLOW_ROWS;
}

const isPersonalAsRecorded = ({ personal, personalHash: recorded }: { personal: Personal | null; personalHash: string | null }): boolean =>
  personal === null || personalHash(personal.salt, personal.values) === recorded;
