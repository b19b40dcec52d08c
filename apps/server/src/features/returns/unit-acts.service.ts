import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { Decimal } from '#libs/money';
import { expectedCredit, openAmount, type ReturnReason, type UnitPlace } from '#libs/unit-life';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import type { MoneyDto } from './dto/unit-acts.dto.ts';
import { cannotGoBack, noAmount, noSuchEntry, nothingOpen, openedForGood } from './returns.errors.ts';
import { ReturnNotesRepository } from './return-notes.repository.ts';
import type { MoneyRow, Unit } from './units.repository.ts';
import { type MoneyToEnter, type UnitMove, Units } from './units.service.ts';

const counterOf = (id: string): string => `counter-entry to ${id}`;
const decimal = (typed: string): string => new Decimal(typed.replace(',', '.')).toFixed(2);

/** What the desk does with a piece on the shelf, one transaction each. */
@Injectable()
export class UnitActs {
  constructor(
    private readonly units: Units,
    private readonly notes: ReturnNotesRepository,
    private readonly unitOfWork: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  /** On its way back; refused where the supplier will not take it. */
  async sendBack(id: string, reason: ReturnReason): Promise<void> {
    await this.act(id, async (tx, unit) => {
      const against = reason === 'not-needed' ? await this.units.against(unit) : null;
      if (against !== null) throw cannotGoBack(unit.label, against);
      await this.units.move(tx, unit, { to: 'to-return', returnReason: reason, why: REASON_WORDS[reason] });
    });
  }

  async move(id: string, move: UnitMove): Promise<void> {
    await this.act(id, (tx, unit) => this.units.move(tx, unit, move));
  }

  /** With one signature. */
  async handOver(ids: readonly string[], evidence: string): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      // In one order for everybody, so that two people at once wait for each other and not in a ring.
      const units: Unit[] = [];
      for (const id of [...new Set(ids)].sort()) {
        const unit = await this.units.hold(tx, id);
        await this.leave(tx, unit, evidence);
        units.push(unit);
      }
      await this.note(tx, units, evidence);
      return null;
    });
  }

  async leave(tx: Tx, unit: Unit, evidence: string): Promise<void> {
    await this.units.move(tx, unit, { to: 'handed-over', evidence });
    await this.closeIfPaid(tx, unit);
  }

  /** Whatever leaves has a number that its supplier can be asked about. */
  private async note(tx: Tx, units: readonly Unit[], evidence: string): Promise<void> {
    const at = this.clock.now();
    for (const supplierId of new Set(units.map(({ variant }) => variant.supplier.id))) {
      const theirs = units.filter(({ variant }) => variant.supplier.id === supplierId).map(({ id }) => id);
      const noteId = await this.notes.create(tx, { supplierId, madeAt: at, madeById: currentStaff().staffId }, theirs);
      await this.notes.leave(tx, noteId, { at, evidence });
    }
  }

  /** Money is always taken in, wherever the piece is. A credit that keeps just what the terms allow leaves nothing to chase. */
  async enter(id: string, { kind, amount, reference }: MoneyDto): Promise<void> {
    const amountNet = decimal(amount);
    if (new Decimal(amountNet).isZero()) throw noAmount();
    await this.act(id, async (tx, unit) => {
      await this.take(tx, unit, { kind, amountNet, reference });
    });
  }

  /** Money as a paper says it, in the transaction of that paper. @returns the entry's id. */
  async take(tx: Tx, unit: Unit, money: MoneyToEnter): Promise<string> {
    const entryId = await this.units.enter(tx, unit, money);
    const restocking = money.kind === 'credited' ? restockingLeft(unit) : null;
    if (restocking !== null)
      await this.units.enter(tx, unit, {
        kind: 'loss-accepted',
        amountNet: restocking,
        reference: money.reference ?? '',
        why: RESTOCKING_WORDS,
      });
    await this.closeIfPaid(tx, unit);
    return entryId;
  }

  /** The owner gives up what is open. */
  async acceptLoss(id: string, why: string): Promise<void> {
    await this.act(id, async (tx, unit) => {
      await this.giveUp(tx, unit, why);
      await this.closeIfPaid(tx, unit);
    });
  }

  async writeOff(id: string, why: string): Promise<void> {
    await this.act(id, async (tx, unit) => {
      if (!openAmount(unit.money).isZero()) await this.giveUp(tx, unit, why);
      await this.units.move(tx, unit, { to: 'written-off', why });
    });
  }

  /** By a counter-entry: what was entered stays on record. */
  async takeMoneyBack(id: string, entryId: string): Promise<void> {
    await this.act(id, async (tx, unit) => {
      const entry = unit.money.find((one) => one.id === entryId);
      if (!entry || !canTakeBack(unit.money, entry)) throw noSuchEntry();
      await this.counter(tx, unit, entry);
    });
  }

  /** A credit takes with it the loss that its terms had accepted beside it. */
  async counter(tx: Tx, unit: Unit, entry: MoneyRow): Promise<void> {
    const beside = entry.kind === 'credited' ? unit.money.filter((one) => isRestockingOf(one, entry) && canTakeBack(unit.money, one)) : [];
    for (const { id, kind, amountNet } of [entry, ...beside]) {
      await this.units.enter(tx, unit, { kind, amountNet: new Decimal(amountNet).negated().toFixed(2), reference: counterOf(id) });
    }
  }

  async openBox(id: string, isSure: boolean): Promise<void> {
    await this.act(id, async (tx, unit) => {
      if (unit.variant.supplier.unopenedOnly && !isSure) throw openedForGood(unit.variant.supplier.name);
      await this.units.open(tx, unit);
    });
  }

  private async giveUp(tx: Tx, unit: Unit, why: string): Promise<void> {
    const open = openAmount(unit.money);
    if (!open.greaterThan(0)) throw nothingOpen(unit.label);
    await this.units.enter(tx, unit, { kind: 'loss-accepted', amountNet: open.toFixed(2), why });
  }

  /** Sent back and nothing open any more: its story ends. */
  private async closeIfPaid(tx: Tx, unit: Unit): Promise<void> {
    const isPaid = unit.money.length > 0 && openAmount(unit.money).isZero();
    if (unit.place === ('handed-over' satisfies UnitPlace) && isPaid) await this.units.move(tx, unit, { to: 'gone-for-good' });
  }

  private async act(id: string, work: (tx: Tx, unit: Unit) => Promise<void>): Promise<void> {
    await this.unitOfWork.run(async (tx) => {
      await work(tx, await this.units.hold(tx, id));
      return null;
    });
  }
}

const RESTOCKING_WORDS = 'Restocking within the terms';

const isRestockingOf = ({ kind, reference, why }: MoneyRow, credit: MoneyRow): boolean =>
  kind === 'loss-accepted' && why === RESTOCKING_WORDS && reference === credit.reference;

const REASON_WORDS: Readonly<Record<ReturnReason, string>> = {
  'not-needed': 'Not needed',
  wrong: 'Wrong piece',
  damaged: 'Damaged',
  failed: 'Failed',
};

/** A counter-entry can't be countered, and an entry only once. */
export function canTakeBack(money: readonly MoneyRow[], { id, reference }: MoneyRow): boolean {
  return !reference.startsWith(counterOf('')) && !money.some((one) => one.reference === counterOf(id));
}

/** What is still open where the credits so far are exactly what the terms promise; null otherwise. */
function restockingLeft({ money, variant }: Unit): string | null {
  const sum = (kind: MoneyRow['kind']): Decimal =>
    money.filter((entry) => entry.kind === kind).reduce((total, { amountNet }) => total.plus(amountNet), new Decimal(0));
  const open = openAmount(money);
  const promised = expectedCredit({ restockingPercent: variant.supplier.restockingPct }, sum('charged').toFixed(2));
  return open.greaterThan(0) && sum('credited').equals(promised) ? open.toFixed(2) : null;
}
