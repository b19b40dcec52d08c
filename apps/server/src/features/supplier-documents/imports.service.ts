import { createHash } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { DbClient } from '#libs/db';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import type { UploadedFile } from '../../platform/uploads/request-files.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { isoDay } from '../../web/dates.ts';
import type { FileReading } from './csv/file-reading.types.ts';
import { guessReading } from './csv/guess-reading.ts';
import { type ReadLines, readLines } from './csv/read-lines.ts';
import { Documents, type PaperToEnter } from './documents.service.ts';
import { type DocumentRow, DocumentsRepository } from './documents.repository.ts';
import { type ImportKind, type ImportRow, ImportsRepository } from './imports.repository.ts';
import { papersOf } from './papers-of.ts';
import type { EnteredLine, Reconciled } from './reconciled.types.ts';
import { Reconciling } from './reconciling.service.ts';
import { noImport, noLines, noSuchSupplier, nothingToTakeIn } from './supplier-documents.errors.ts';

/** What taking a file in would do, before it is done. */
export interface Preview {
  row: ImportRow;
  read: ReadLines;
  papers: readonly { paper: PaperToEnter; isTaken: boolean; found: Reconciled | undefined }[];
  /** What it became, once it is taken in. */
  documents: readonly DocumentRow[];
}

/** A supplier's file: kept as it came, read as a person says, looked at before it is taken in, and taken in once. */
@Injectable()
export class Imports {
  constructor(
    private readonly imports: ImportsRepository,
    private readonly documents: DocumentsRepository,
    private readonly papers: Documents,
    private readonly reconciling: Reconciling,
    private readonly workshop: WorkshopFacts,
    private readonly unitOfWork: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  /** The same file again leads to where it already is. @returns the import's id. */
  async upload(supplierId: string, kind: ImportKind, file: UploadedFile | undefined): Promise<string> {
    if (!file || file.bytes.length === 0) throw noLines('Choose the file that the supplier sent.');
    const suppliers = await this.documents.suppliers();
    if (!suppliers.some(({ id }) => id === supplierId)) throw noSuchSupplier();
    const sha256 = createHash('sha256').update(file.bytes).digest('hex');
    const same = await this.imports.same(supplierId, kind, sha256);
    if (same) return same.id;
    const bytes = new Uint8Array(file.bytes);
    const guess = guessReading(bytes);
    const asBefore = await this.imports.remembered(supplierId, kind);
    // What this supplier's last file was read by goes first, unless this one can't be read so.
    const reading = asBefore && readLines(bytes, asBefore, kind).lines.length > 0 ? { ...asBefore, encoding: guess.encoding } : guess;
    const { problem, head } = readLines(bytes, reading, kind);
    if (problem !== undefined && head.length === 0) throw noLines(problem);
    const { staffId: uploadedById } = currentStaff();
    const row = { supplierId, kind, fileName: file.name, sha256, bytes, reading, uploadedAt: this.clock.now(), uploadedById };
    return this.unitOfWork.run((tx) => this.imports.add(tx, row));
  }

  async preview(id: string): Promise<Preview> {
    const row = await this.get(id);
    const read = readLines(row.bytes, row.reading, row.kind);
    if (row.committedAt !== null) return { row, read, papers: [], documents: await this.documents.ofImport(id) };
    const papers = await this.papersOf(row, read.lines);
    const taken = await this.taken(row, papers);
    const shown: Preview['papers'][number][] = [];
    for (const paper of papers) {
      const isTaken = taken.has(paper.number.toLowerCase());
      shown.push({ paper, isTaken, found: isTaken ? undefined : await this.reconciling.reconcile({ id: paper.number, ...paper }) });
    }
    return { row, read, papers: shown, documents: [] };
  }

  async readAs(id: string, reading: FileReading): Promise<void> {
    await this.get(id);
    await this.unitOfWork.run(async (tx) => {
      await this.imports.read(tx, id, reading);
      return null;
    });
  }

  /** All lines that can be read; papers that are on record already are passed over. @returns how many papers came in. */
  async commit(id: string): Promise<number> {
    return this.unitOfWork.run(async (tx) => {
      const by = { at: this.clock.now(), byId: currentStaff().staffId };
      if (!(await this.imports.commit(tx, id, by))) return 0;
      const row = await this.imports.find(id, tx);
      if (!row) throw noImport();
      const papers = await this.papersOf(row, readLines(row.bytes, row.reading, row.kind).lines, tx);
      const taken = await this.taken(row, papers, tx);
      const fresh = papers.filter(({ number }) => !taken.has(number.toLowerCase()));
      if (papers.length === 0) throw nothingToTakeIn();
      for (const paper of fresh) await this.papers.enter(tx, paper);
      const { reading, kind, supplier } = row;
      await this.imports.remember(tx, { supplierId: supplier.id, kind, reading, savedAt: by.at, savedById: by.byId });
      return fresh.length;
    });
  }

  private async get(id: string): Promise<ImportRow> {
    const row = await this.imports.find(id);
    if (!row) throw noImport();
    return row;
  }

  private async papersOf(row: ImportRow, lines: readonly EnteredLine[], db?: DbClient): Promise<PaperToEnter[]> {
    const { timeZone } = await this.workshop.get(db);
    return papersOf(row, lines, isoDay(this.clock.now(), timeZone));
  }

  private taken({ supplier, kind }: ImportRow, papers: readonly PaperToEnter[], db?: DbClient): Promise<Set<string>> {
    const documentKind = kind === 'statement' ? 'statement' : 'credit-note';
    return this.documents.numbersTaken(
      supplier.id,
      documentKind,
      papers.map(({ number }) => number),
      db,
    );
  }
}
