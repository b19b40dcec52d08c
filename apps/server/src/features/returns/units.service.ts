import { randomInt } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import { Decimal } from '#libs/money';
import { sqlState, type Tx, violatedConstraint } from '#libs/db';
import {
  type ArrivalReason,
  checkMove,
  lastReturnDay,
  type MoneyKind,
  type MoveRequest,
  openAmount,
  type ReturnReason,
  type UnitPlace,
} from '#libs/unit-life';
import { Clock } from '../../platform/clock.ts';
import { requestContext } from '../../platform/request-context.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { dayColumn, isoDay } from '../../web/dates.ts';
import { JobAccount } from '../job-cards/job-account.service.ts';
import { chargedAlready, movedMeanwhile, noUnit, refusedMove, unknownCode } from './returns.errors.ts';
import { backAgainst } from './return-candidate.ts';
import { bareCode, codeProblem, unitCode } from './unit-code.ts';
import { type MoveRow, type Unit, UnitsRepository } from './units.repository.ts';

export { unitCodeText } from './unit-code.ts';
export type { Unit } from './units.repository.ts';

export interface UnitToMake {
  variantId: string;
  orderLineId: string | null;
  arrivalReason: ArrivalReason;
  jobId: string | null;
}

export interface UnitMove {
  to: UnitPlace;
  why?: string;
  /** Signature or tracking number of a hand-over. */
  evidence?: string;
  returnReason?: ReturnReason;
  /** Nobody decided it: it follows from the job. */
  byItself?: boolean;
}

export interface MoneyToEnter {
  kind: MoneyKind;
  amountNet: string;
  reference?: string;
  why?: string;
}

const NOT_THERE = 'RW002';
/** Writing off is the owner's, whatever the piece cost. */
const RULES = { writeOffLimit: '0' };

/** The one way in which a piece changes its place or its money: a row of its history, which the library and the database check. */
@Injectable()
export class Units {
  constructor(
    private readonly units: UnitsRepository,
    private readonly account: JobAccount,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
  ) {}

  async get(id: string, tx?: Tx): Promise<Unit> {
    const unit = await this.units.find(id, tx);
    if (!unit) throw noUnit();
    return unit;
  }

  /** As it is now, held until the transaction ends. */
  async hold(tx: Tx, id: string): Promise<Unit> {
    await this.units.lock(tx, id);
    return this.get(id, tx);
  }

  async byTypedCode(typed: string, tx?: Tx): Promise<Unit> {
    const code = bareCode(typed);
    const unit = await this.units.byCode(code, tx);
    if (!unit) throw unknownCode(codeProblem(code));
    return unit;
  }

  ofJob(jobId: string, tx?: Tx): Promise<Unit[]> {
    return this.units.ofJob(jobId, tx);
  }

  ofOrder(orderId: string): Promise<Unit[]> {
    return this.units.ofOrder(orderId);
  }

  at(places: readonly UnitPlace[]): Promise<Unit[]> {
    return this.units.at(places);
  }

  staffNames(): Promise<ReadonlyMap<string, string>> {
    return this.units.staffNames();
  }

  moves(id: string): Promise<MoveRow[]> {
    return this.units.moves(id);
  }

  stocked(variantIds: readonly string[]): Promise<Unit[]> {
    return this.units.stocked(variantIds);
  }

  /** Why its supplier will not take a piece back, in words; null where it will. */
  async against(unit: Unit): Promise<string | null> {
    const { timeZone } = await this.workshop.get();
    return backAgainst(unit, isoDay(this.clock.now(), timeZone));
  }

  /** Every unit begins as expected, whatever its reason: its arrival is a move like any other. */
  async make(tx: Tx, unit: UnitToMake): Promise<string> {
    const id = await this.units.create(tx, { ...unit, code: await this.freeCode(tx), createdAt: this.clock.now() });
    await this.square(tx, unit.jobId);
    return id;
  }

  /** It came: set aside, with its last day to go back, and charged at the price of its order. */
  async arrive(tx: Tx, id: string): Promise<void> {
    const unit = await this.hold(tx, id);
    const { timeZone } = await this.workshop.get(tx);
    const arrivedAt = this.clock.now();
    const arrivedOn = isoDay(arrivedAt, timeZone);
    const orderedOn = unit.orderLine ? isoDay(unit.orderLine.order.orderedAt, timeZone) : arrivedOn;
    // An invoice comes no earlier than the piece: reckoned from arrival, the last day is never too late.
    const lastDay = lastReturnDay(unit.variant.supplier, { orderedOn, arrivedOn, invoicedOn: arrivedOn });
    const returnBy = lastDay === null ? null : (dayColumn(lastDay) ?? null);
    await this.move(tx, unit, { to: 'set-aside', why: 'Goods in' });
    await this.units.setFacts(tx, id, { arrivedAt, returnBy });
    // An invoice may have come before the piece and charged it already.
    if (!unit.orderLine || new Decimal(unit.orderLine.priceNet).isZero() || unit.money.some(({ kind }) => kind === 'charged')) return;
    await this.enter(tx, unit, { kind: 'charged', amountNet: unit.orderLine.priceNet, reference: `order ${unit.orderLine.order.number}` });
  }

  /** @throws where the unit is elsewhere, the step does not exist, its evidence is missing, or an end is entered with money open. */
  async move(tx: Tx, unit: Unit, { to, why = '', evidence = '', returnReason = 'not-needed', byItself = false }: UnitMove): Promise<void> {
    const { label: code } = unit;
    const staff = byItself ? undefined : requestContext.getStore()?.staff;
    const at = this.clock.now();
    const request: MoveRequest = {
      to,
      why,
      returnReason,
      by: staff?.staffId ?? 'the tool',
      at: at.toISOString(),
      isOwner: staff?.role === 'owner',
      signature: evidence,
      document: evidence,
      ...(unit.job ? { jobId: unit.job.id } : {}),
    };
    const answer = checkMove(toLife(unit), request, RULES);
    if (!answer.ok) throw refusedMove(code, answer.why, openAmount(unit.money).toFixed(2));
    try {
      await this.units.addMove(tx, { unitId: unit.id, from: unit.place, to, at, byId: staff?.staffId ?? null, why, evidence });
    } catch (error) {
      if (sqlState(error) === NOT_THERE) throw movedMeanwhile(code);
      throw error;
    }
    unit.place = to;
    await this.square(tx, unit.job?.id);
  }

  /** @returns the entry's id. */
  async enter(tx: Tx, unit: Unit, { kind, amountNet, reference = '', why = '' }: MoneyToEnter): Promise<string> {
    const entry = { kind, amountNet, at: this.clock.now(), byId: requestContext.getStore()?.staff?.staffId ?? null, reference, why };
    const id = await this.add(tx, unit, entry);
    unit.money.push({ id, ...entry });
    await this.square(tx, unit.job?.id);
    return id;
  }

  private async add(tx: Tx, unit: Unit, entry: Omit<Unit['money'][number], 'id'>): Promise<string> {
    try {
      return await this.units.addMoney(tx, unit.id, entry);
    } catch (error) {
      if (violatedConstraint(error) === 'unit_money_one_charge') throw chargedAlready(unit.label);
      throw error;
    }
  }

  /** The box is opened: some suppliers then take it back no more. */
  async open(tx: Tx, unit: Unit): Promise<void> {
    await this.units.setFacts(tx, unit.id, { isOpened: true });
    unit.isOpened = true;
  }

  /** From our own shelf for a job: its cost follows it there. */
  async assign(tx: Tx, unit: Unit, job: { id: string; number: number; keyTag: number | null }): Promise<void> {
    const before = unit.job?.id;
    await this.units.setFacts(tx, unit.id, { jobId: job.id });
    unit.job = job;
    if (before !== undefined && before !== job.id) await this.square(tx, before);
  }

  private async square(tx: Tx, jobId: string | null | undefined): Promise<void> {
    if (jobId !== null && jobId !== undefined) await this.account.square(tx, jobId);
  }

  private async freeCode(tx: Tx): Promise<string> {
    for (;;) {
      const code = unitCode((below) => randomInt(below));
      if (!(await this.units.isTaken(code, tx))) return code;
    }
  }
}

function toLife({ place, money }: Unit): Parameters<typeof checkMove>[0] {
  return { place, money: money.map((entry) => ({ ...entry, at: entry.at.toISOString(), by: entry.byId ?? 'the tool' })) };
}
