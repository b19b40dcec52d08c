import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { type Tx, violatedConstraint } from '#libs/db';
import { Decimal, sumAmounts } from '#libs/money';
import { Audit } from '../../platform/audit.ts';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { type DocumentRow, DocumentsRepository, type LineRow, type SupplierName } from './documents.repository.ts';
import type { TypedDocumentDto } from './dto/typed-document.dto.ts';
import { Laying } from './laying.service.ts';
import { type DifferenceRow, MatchesRepository, type MatchRow } from './matches.repository.ts';
import { readTypedDocument } from './read-typed-document.ts';
import type { DocumentKind, EnteredLine } from './reconciled.types.ts';
import { Reconciling } from './reconciling.service.ts';
import { documentTaken, noDocument, noSuchSupplier, withdrawnMeanwhile } from './supplier-documents.errors.ts';

export interface PaperToEnter {
  kind: DocumentKind;
  supplierId: string;
  number: string;
  /** YYYY-MM-DD. */
  datedOn: string;
  gross: string | null;
  importId: string | null;
  lines: readonly EnteredLine[];
}

export interface WholeDocument {
  document: DocumentRow;
  lines: readonly LineRow[];
  matches: readonly MatchRow[];
  differences: readonly DifferenceRow[];
}

/** Suppliers' papers: entered once, laid beside our books, withdrawn at most. */
@Injectable()
export class Documents {
  constructor(
    private readonly documents: DocumentsRepository,
    private readonly matches: MatchesRepository,
    private readonly reconciling: Reconciling,
    private readonly laying: Laying,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  async home(): Promise<{ undecided: DocumentRow[]; recent: DocumentRow[]; differences: DifferenceRow[] }> {
    const [undecided, recent, differences] = await Promise.all([
      this.documents.undecided(),
      this.documents.recent(),
      this.matches.openDifferences(),
    ]);
    return { undecided, recent, differences };
  }

  openDifferences(): Promise<DifferenceRow[]> {
    return this.matches.openDifferences();
  }

  suppliers(): Promise<SupplierName[]> {
    return this.documents.suppliers();
  }

  async get(id: string): Promise<WholeDocument> {
    const document = await this.documents.find(id);
    if (!document) throw noDocument();
    const [lines, matches, differences] = await Promise.all([
      this.documents.lines(id),
      this.matches.ofDocument(id),
      this.matches.differencesOf(id),
    ]);
    return { document, lines, matches, differences };
  }

  async enterTyped(kind: DocumentKind, input: TypedDocumentDto): Promise<string> {
    const suppliers = await this.documents.suppliers();
    if (!suppliers.some(({ id }) => id === input.supplierId)) throw noSuchSupplier();
    const { lines, gross } = readTypedDocument(input);
    const { supplierId, number, datedOn } = input;
    return this.unitOfWork.run((tx) => this.enter(tx, { kind, supplierId, number, datedOn, gross, importId: null, lines }));
  }

  /** @returns the document's id. */
  async enter(tx: Tx, { lines, ...paper }: PaperToEnter): Promise<string> {
    const id = randomUUID();
    const { kinds, ...found } = await this.reconciling.reconcile({ id, ...paper, lines }, tx);
    const { staffId: enteredById } = currentStaff();
    const { datedOn, ...facts } = paper;
    const total = new Decimal(sumAmounts(['0', ...lines.map(({ amount }) => amount)])).toFixed(2);
    try {
      await this.documents.create(
        tx,
        { id, ...facts, datedOn: new Date(`${datedOn}T00:00:00Z`), total, enteredById, enteredAt: this.clock.now() },
        lines.map((line) => ({ ...line, kind: kinds.get(line.id) ?? null })),
      );
    } catch (error) {
      if (violatedConstraint(error) === 'supplier_document_once') throw documentTaken(paper.number);
      throw error;
    }
    await this.laying.write(tx, { id, ...paper }, { kinds, ...found });
    const after = { kind: paper.kind, number: paper.number, total, lines: lines.length };
    await this.audit.record(tx, { action: 'entered', subject: 'supplier document', subjectId: id, after });
    return id;
  }

  /** Its money goes back by counter-entries; lines and matches stay on record. */
  async withdraw(id: string, why: string): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      const matches = await this.matches.ofDocument(id, tx);
      const open = matches.filter(({ state }) => state !== 'ended').sort((a, b) => (a.unit?.id ?? '').localeCompare(b.unit?.id ?? ''));
      for (const { id: matchId, unit, moneyId, lineId } of open) {
        await this.matches.holdLine(tx, lineId);
        await this.laying.end(tx, { id: matchId, unitId: unit?.id ?? null, moneyId }, why);
      }
      const by = { at: this.clock.now(), byId: currentStaff().staffId, why };
      if (!(await this.documents.withdraw(tx, id, by))) throw withdrawnMeanwhile();
      await this.matches.settle(tx, { documentId: id }, { ...by, why: `Withdrawn: ${why}` });
      await this.audit.record(tx, { action: 'withdrew', subject: 'supplier document', subjectId: id, after: { why } });
      return null;
    });
  }
}
