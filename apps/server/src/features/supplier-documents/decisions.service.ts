import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { Decimal } from '#libs/money';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { Units } from '../returns/units.service.ts';
import { type DocumentRow, DocumentsRepository } from './documents.repository.ts';
import { Laying } from './laying.service.ts';
import { MatchesRepository, type MatchRow } from './matches.repository.ts';
import type { MatchRole } from './reconciled.types.ts';
import { Reconciling } from './reconciling.service.ts';
import { decidedMeanwhile, laidAlready, noDocument, withdrawnMeanwhile } from './supplier-documents.errors.ts';

/** What a person decides about a line of a paper: each once, with who and when, and each can be taken back. */
@Injectable()
export class Decisions {
  constructor(
    private readonly documents: DocumentsRepository,
    private readonly matches: MatchesRepository,
    private readonly laying: Laying,
    private readonly reconciling: Reconciling,
    private readonly units: Units,
    private readonly unitOfWork: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async accept(documentId: string, matchId: string, role: MatchRole): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      const { match, document } = await this.hold(tx, documentId, matchId);
      if (match.state !== 'proposed') throw decidedMeanwhile();
      await this.nameDifference(tx, document, { ...match, role });
      await this.laying.lay(tx, document, { ...match, role, unitId: match.unit?.id ?? null });
      if (role === 'same') await this.settleLine(tx, match, 'The same money as entered before');
      await this.endRivals(tx, match);
      return null;
    });
  }

  /** A match is taken back, or a proposal turned down. */
  async end(documentId: string, matchId: string, why: string): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      const { match } = await this.hold(tx, documentId, matchId);
      if (match.state === 'ended') throw decidedMeanwhile();
      await this.laying.end(tx, { id: match.id, unitId: match.unit?.id ?? null, moneyId: match.moneyId }, why);
      await this.settleLine(tx, match, why);
      return null;
    });
  }

  /** A piece of the line on the unit whose code was typed. */
  async byHand(documentId: string, lineId: string, typedCode: string): Promise<void> {
    const unit = await this.units.byTypedCode(typedCode);
    await this.unitOfWork.run(async (tx) => {
      await this.matches.holdLine(tx, lineId);
      const document = await this.document(tx, documentId);
      const line = (await this.documents.lines(documentId, tx)).find(({ id }) => id === lineId);
      if (!line) throw noDocument();
      const laid = (await this.matches.ofDocument(documentId, tx)).filter((match) => match.lineId === lineId && match.state === 'laid');
      const pieces = line.quantity - laid.length;
      if (pieces < 1) throw laidAlready();
      const left = laid.reduce((sum, { share }) => sum.minus(share), new Decimal(line.amount).abs());
      const share = left
        .div(pieces)
        .toDecimalPlaces(2, pieces === 1 ? Decimal.ROUND_HALF_UP : Decimal.ROUND_DOWN)
        .toFixed(2);
      const side = document.kind === 'invoice' ? 'charge' : 'credit';
      const match = { lineId, side, role: 'whole', share, fee: '0.00' } as const;
      await this.nameDifference(tx, document, { ...match, unit });
      await this.laying.add(tx, document, { ...match, target: { unitId: unit.id }, reasons: [] }, 'by-hand');
      await this.matches.settle(tx, { lineId, unitId: null }, this.by(`Laid by hand on ${unit.label}`));
      await this.endRivals(tx, { lineId, documentId });
      return null;
    });
  }

  async settle(differenceId: string, why: string): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      if ((await this.matches.settle(tx, { id: differenceId }, this.by(why))) === 0) throw decidedMeanwhile();
      return null;
    });
  }

  private async hold(tx: Tx, documentId: string, matchId: string): Promise<{ match: MatchRow; document: DocumentRow }> {
    const known = await this.matches.find(matchId, tx);
    if (known?.documentId !== documentId) throw noDocument();
    await this.matches.holdLine(tx, known.lineId);
    const match = (await this.matches.find(matchId, tx)) ?? known;
    return { match, document: await this.document(tx, documentId) };
  }

  private async document(tx: Tx, id: string): Promise<DocumentRow> {
    const document = await this.documents.find(id, tx);
    if (!document) throw noDocument();
    if (document.withdrawn) throw withdrawnMeanwhile();
    return document;
  }

  /** Said before the money is entered: it is told from what was due until now. */
  private async nameDifference(
    tx: Tx,
    document: DocumentRow,
    {
      lineId,
      side,
      role,
      share,
      fee,
      unit,
    }: Pick<MatchRow, 'lineId' | 'side' | 'role' | 'share' | 'fee'> & { unit: { id: string } | null },
  ): Promise<void> {
    if (role !== 'whole' || !unit) return;
    const line = (await this.documents.lines(document.id, tx)).find(({ id }) => id === lineId);
    if (!line) return;
    const found = await this.reconciling.differenceOf(line, unit.id, { side, share, fee, documentId: document.id, db: tx });
    await this.matches.addDifferences(tx, document.id, found, this.clock.now());
  }

  /** Once all pieces of a line are laid, what else was proposed for it is off the table. */
  private async endRivals(tx: Tx, { lineId, documentId }: Pick<MatchRow, 'lineId' | 'documentId'>): Promise<void> {
    const line = (await this.documents.lines(documentId, tx)).find(({ id }) => id === lineId);
    const ofLine = (await this.matches.ofDocument(documentId, tx)).filter((match) => match.lineId === lineId);
    const laid = ofLine.filter(({ state }) => state === 'laid').length;
    const rivals = ofLine.filter(({ state }) => state === 'proposed').map(({ id }) => id);
    if (line && laid >= line.quantity && rivals.length > 0) await this.matches.end(tx, rivals, this.by('The line is laid'));
  }

  private async settleLine(tx: Tx, { lineId, unit }: MatchRow, why: string): Promise<void> {
    if (unit) await this.matches.settle(tx, { lineId, unitId: unit.id }, this.by(why));
  }

  private by(why: string): { at: Date; byId: string; why: string } {
    return { at: this.clock.now(), byId: currentStaff().staffId, why };
  }
}
