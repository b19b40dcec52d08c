import { Injectable } from '@nestjs/common';
import type { DbClient } from '#libs/db';
import { creditDifference, type CreditUnit, MatchingInputError } from '#libs/matching';
import { Decimal, toDecimal } from '#libs/money';
import { creditDueOn } from '#libs/unit-life';
import { Clock } from '../../platform/clock.ts';
import { DomainError } from '../../platform/domain-error.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { isoDay } from '../../web/dates.ts';
import { returnNoteNumber } from '../../web/return-note-number.ts';
import { AccountsRepository, type UnitAccount } from './accounts.repository.ts';
import { reconcileCredits, toCreditLine } from './reconcile-credits.ts';
import { priceDifference, reconcileInvoice } from './reconcile-invoice.ts';
import { type NamedDocument, reconcileStatement } from './reconcile-statement.ts';
import type { DocumentKind, EnteredLine, FoundDifference, MatchSide, Reconciled } from './reconciled.types.ts';

export interface Paper {
  id: string;
  kind: DocumentKind;
  supplierId: string;
  /** YYYY-MM-DD. */
  datedOn: string;
  lines: readonly EnteredLine[];
}

/** Papers speak of what happened lately; older pieces only while their money is open. */
const RECENT_DAYS = 400;
const DAY_MS = 86_400_000;
const TOLERANCE = '0.02';

/** Lays a supplier's paper beside our books and says what it finds; writes nothing. */
@Injectable()
export class Reconciling {
  constructor(
    private readonly accounts: AccountsRepository,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
  ) {}

  async reconcile(paper: Paper, db?: DbClient): Promise<Reconciled> {
    try {
      if (paper.kind === 'statement') return reconcileStatement(paper.lines, await this.namedBy(paper, db));
      if (paper.kind === 'invoice') {
        const units = await this.accounts.chargeable(paper.supplierId, this.since(), db);
        return reconcileInvoice(paper.lines, units.map(toChargedUnit), { documentId: paper.id });
      }
      const units = await this.accounts.creditable(paper.supplierId, this.since(), db);
      const { timeZone } = await this.workshop.get(db);
      const today = isoDay(this.clock.now(), timeZone);
      return reconcileCredits(paper.lines, units.map(toCreditUnit), { documentId: paper.id, today });
    } catch (error) {
      if (!(error instanceof MatchingInputError)) throw error;
      throw new DomainError('impossible', `matching-${error.code}`, error.message, { errors: error.problems });
    }
  }

  /** How money that a person lays on a unit differs from what was due, or ordered, just before. */
  async differenceOf(
    line: EnteredLine,
    unitId: string,
    { side, share, fee, documentId, db }: { side: MatchSide; share: string; fee: string; documentId: string; db: DbClient },
  ): Promise<FoundDifference[]> {
    const [account] = await this.accounts.byIds([unitId], db);
    if (!account) return [];
    if (side === 'charge')
      return priceDifference({ lineId: line.id, unitId, share, ordered: account.orderedAt ?? '0', name: line.part || line.text });
    const money = { share: toDecimal(share), fee: toDecimal(fee), tolerance: toDecimal(TOLERANCE) };
    const found = creditDifference(toCreditLine(line, documentId), toCreditUnit(account), money);
    if (!found) return [];
    return [{ kind: found.kind, lineId: line.id, target: { unitId }, amount: found.amount, isWithTax: false, words: found.words }];
  }

  private async namedBy({ supplierId, datedOn }: Paper, db?: DbClient): Promise<NamedDocument[]> {
    const endOfDay = new Date(new Date(`${datedOn}T00:00:00Z`).getTime() + 2 * DAY_MS);
    // One after the other: inside a transaction they share its connection.
    const { vatRatePct } = await this.workshop.get(db);
    const notes = await this.accounts.openNotes(supplierId, endOfDay, db);
    const papers = await this.accounts.papers(supplierId, this.since(), db);
    const withTax = (net: string): string => new Decimal(net).times(new Decimal(vatRatePct).div(100).plus(1)).toFixed(2);
    return [
      ...papers
        .filter((paper) => paper.datedOn <= datedOn)
        .map(({ id, kind, number, datedOn: date, total, gross, isNamed }): NamedDocument => ({
          id,
          kind,
          numbers: [number],
          total: (gross ?? withTax(total)).replace('-', ''),
          date,
          target: { namesId: id },
          isSettled: isNamed,
        })),
      ...notes.map(({ id, number, evidence, handedOverOn, due }): NamedDocument => ({
        id,
        kind: 'expected-credit',
        numbers: [returnNoteNumber(number), evidence],
        total: withTax(due),
        date: handedOverOn,
        target: { returnNoteId: id },
        isSettled: false,
      })),
    ];
  }

  private since(): Date {
    return new Date(this.clock.now().getTime() - RECENT_DAYS * DAY_MS);
  }
}

function toCreditUnit(account: UnitAccount): CreditUnit {
  const { id, partNumber, charged, back, restockingPct, daysToCredit, handedOverOn } = account;
  return {
    id,
    references: referencesOf(account),
    parts: [partNumber],
    charged,
    credited: back,
    restockingPercent: restockingPct,
    handedOverOn,
    creditDueOn: handedOverOn === null ? null : creditDueOn({ daysToCredit }, handedOverOn),
  };
}

/** Once it has its invoice line it has been charged in full: another one is a second charge. */
function toChargedUnit(account: UnitAccount): CreditUnit {
  const { id, partNumber, orderedAt, charged, invoiceNumbers } = account;
  const price = orderedAt ?? charged;
  return {
    id,
    references: account.orderNumber === null ? [] : [`order ${account.orderNumber}`, String(account.orderNumber)],
    parts: [partNumber],
    charged: price,
    credited: invoiceNumbers.length > 0 ? price : '0',
  };
}

function referencesOf({ label, orderNumber, noteNumbers, invoiceNumbers }: UnitAccount): string[] {
  return [label, ...(orderNumber === null ? [] : [`order ${orderNumber}`]), ...noteNumbers.map(returnNoteNumber), ...invoiceNumbers];
}
