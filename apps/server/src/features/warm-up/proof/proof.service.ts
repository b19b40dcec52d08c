import { createHash } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { compareLogs, type Sample } from '#libs/warm-up';
import type { DbClient, Tx } from '#libs/db';
import { canonicalJson } from '../../../platform/canonical-json.ts';
import { Clock } from '../../../platform/clock.ts';
import { PdfRenderer } from '../../../platform/pdf/pdf-renderer.ts';
import { currentStaff } from '../../../platform/request-context.ts';
import { WorkshopFacts } from '../../../platform/workshop-facts.ts';
import { LogsRepository } from '../keeping/logs.repository.ts';
import { type ProofSheet, ProofSheetsRepository } from '../keeping/proof-sheets.repository.ts';
import { RunUpJobsRepository } from '../keeping/run-up-jobs.repository.ts';
import { noProofYet } from '../warm-up.errors.ts';
import { CardProof } from './card-proof.service.ts';
import { composeProof } from './compose-proof.ts';
import { isProven } from './is-proven.ts';
import { type LogPair, pairOfLogs } from './pair-of-logs.ts';
import { presentProofSheet } from './present-proof-sheet.ts';

/** The steps of the card that a log answers. */
const STEPS = { before: 'before-log', after: 'after-log' } as const;

/** The proof sheet of a job: made again whenever its logs change, each version kept, printed on first asking. */
@Injectable()
export class ProofService {
  constructor(
    private readonly logs: LogsRepository,
    private readonly sheets: ProofSheetsRepository,
    private readonly jobs: RunUpJobsRepository,
    private readonly cardProof: CardProof,
    private readonly workshop: WorkshopFacts,
    private readonly renderer: PdfRenderer,
    private readonly clock: Clock,
  ) {}

  /** After a log came or was withdrawn: the card follows, then the sheet. */
  async follow(tx: Tx, jobId: string): Promise<void> {
    const pair = pairOfLogs(await this.logs.ofJob(jobId, tx));
    if (pair.before) await this.cardProof.tick(tx, jobId, { step: STEPS.before, logId: pair.before.id });
    if (pair.after && isProven(pair)) await this.cardProof.tick(tx, jobId, { step: STEPS.after, logId: pair.after.id });
    await this.renew(tx, jobId, pair);
  }

  /** A log that doesn't count any more: its tick goes with it. */
  async forgo(tx: Tx, jobId: string, { logId, why }: { logId: string; why: string }): Promise<void> {
    for (const step of Object.values(STEPS)) await this.cardProof.takeBack(tx, jobId, { step, logId, why });
    await this.follow(tx, jobId);
  }

  ofJob(jobId: string): Promise<ProofSheet[]> {
    return this.sheets.ofJob(jobId);
  }

  async newest(jobId: string): Promise<ProofSheet> {
    const [sheet] = await this.sheets.ofJob(jobId);
    if (!sheet) throw noProofYet();
    return sheet;
  }

  /** @throws no-browser where nothing can print: the sheet stands, its page comes later */
  async pdf(sheetId: string): Promise<{ sheet: ProofSheet; bytes: Uint8Array }> {
    const sheet = await this.sheets.document(sheetId);
    if (!sheet) throw noProofYet();
    const known = await this.sheets.file(sheetId);
    if (known) return { sheet, bytes: known };
    const { timeZone } = await this.workshop.get();
    const view = presentProofSheet(sheet, timeZone);
    const bytes = Uint8Array.from(await this.renderer.render({ template: 'features/warm-up/views/proof-sheet.hbs', view, paper: 'a4' }));
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    await this.sheets.keepFile({ sheetId, bytes, sha256, madeAt: this.clock.now() });
    return { sheet, bytes: (await this.sheets.file(sheetId)) ?? bytes };
  }

  /** The readings of the logs that speak. */
  async samplesOf({ before, after }: LogPair, db?: DbClient): Promise<ReadonlyMap<string, readonly Sample[]>> {
    const samples = new Map<string, readonly Sample[]>();
    for (const log of [before, after]) if (log) samples.set(log.id, await this.logs.samples(log.id, db));
    return samples;
  }

  private async renew(tx: Tx, jobId: string, pair: LogPair): Promise<void> {
    const job = await this.jobs.find(jobId, tx);
    const [last] = await this.sheets.ofJob(jobId, tx);
    if (!job || (!last && !pair.before && !pair.after)) return;
    const samplesOf = await this.samplesOf(pair, tx);
    const document = composeProof({ job, workshop: await this.workshop.get(tx), pair, samplesOf });
    const known = last && (await this.sheets.document(last.id, tx))?.document;
    if (known && canonicalJson(known) === canonicalJson(document)) return;
    const { outcome } = compareLogs(pair.before?.analysis ?? null, pair.after?.analysis ?? null);
    await this.sheets.add(tx, {
      jobId,
      version: (last?.version ?? 0) + 1,
      outcome,
      document,
      madeAt: this.clock.now(),
      madeById: currentStaff().staffId,
    });
  }
}
