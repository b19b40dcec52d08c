import { Injectable } from '@nestjs/common';
import { type Tx, violatedConstraint } from '#libs/db';
import { Decimal } from '#libs/money';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { UnitActs } from '../returns/unit-acts.service.ts';
import { type Unit, Units } from '../returns/units.service.ts';
import type { DocumentKind, FoundMatch, MatchRole, MatchSide, Reconciled } from './reconciled.types.ts';
import { MatchesRepository, type NewMatch } from './matches.repository.ts';
import { laidAlready } from './supplier-documents.errors.ts';

export interface LaidPaper {
  id: string;
  kind: DocumentKind;
  number: string;
}

interface Laid {
  side: MatchSide;
  role: MatchRole;
  share: string;
  fee: string;
}

const PAPER_WORDS: Readonly<Record<DocumentKind, string>> = { invoice: 'invoice', 'credit-note': 'credit note', statement: 'statement' };

/** Writes what a paper says of units: the match, and with it the entry on the unit's account, in one transaction. */
@Injectable()
export class Laying {
  constructor(
    private readonly matches: MatchesRepository,
    private readonly units: Units,
    private readonly acts: UnitActs,
    private readonly clock: Clock,
  ) {}

  /** The sure matches are laid, the others proposed; every difference is named. */
  async write(tx: Tx, paper: LaidPaper, { matches, differences }: Reconciled): Promise<void> {
    const ofUnits = matches.filter(({ target, certainty }) => certainty === 'sure' && 'unitId' in target);
    for (const match of [...ofUnits].sort(byUnit)) await this.add(tx, paper, match, 'sure');
    await this.matches.addAll(
      tx,
      matches.filter((match) => !ofUnits.includes(match)).map((match) => ({ ...match, ...this.undecided(match) })),
    );
    await this.matches.addDifferences(tx, paper.id, differences, this.clock.now());
  }

  async add(tx: Tx, paper: LaidPaper, match: Omit<FoundMatch, 'certainty'>, certainty: 'sure' | 'by-hand'): Promise<void> {
    const moneyId = 'unitId' in match.target ? await this.pay(tx, paper, match.target.unitId, match) : null;
    const at = this.clock.now();
    const { target, ...rest } = match;
    const row = { ...rest, certainty, state: 'laid', moneyId, at, decidedAt: at, decidedById: currentStaff().staffId } as const;
    await refuseSecond(() => this.matches.add(tx, target, row));
  }

  /** A person says that a proposal is right. */
  async lay(tx: Tx, paper: LaidPaper, { id, unitId, ...laid }: Laid & { id: string; unitId: string | null }): Promise<void> {
    const moneyId = unitId === null ? null : await this.pay(tx, paper, unitId, laid);
    const decided = { role: laid.role, moneyId, at: this.clock.now(), byId: currentStaff().staffId };
    await refuseSecond(() => this.matches.lay(tx, id, decided));
  }

  /** Its money goes back by a counter-entry; the match stays on record as ended. */
  async end(tx: Tx, { id, unitId, moneyId }: { id: string; unitId: string | null; moneyId: string | null }, why: string): Promise<void> {
    if (unitId !== null && moneyId !== null) {
      const unit = await this.units.hold(tx, unitId);
      const entry = unit.money.find((one) => one.id === moneyId);
      if (entry) await this.acts.counter(tx, unit, entry);
    }
    await this.matches.end(tx, [id], { at: this.clock.now(), byId: currentStaff().staffId, why });
  }

  /** A statement's sure line is laid, as no money moves by it; anything unsure is proposed. */
  private undecided({ certainty }: FoundMatch): Pick<NewMatch, 'state' | 'moneyId' | 'at' | 'decidedAt' | 'decidedById'> {
    const at = this.clock.now();
    return certainty === 'sure'
      ? { state: 'laid', moneyId: null, at, decidedAt: at, decidedById: currentStaff().staffId }
      : { state: 'proposed', moneyId: null, at, decidedAt: null, decidedById: null };
  }

  private async pay(tx: Tx, paper: LaidPaper, unitId: string, { side, role, share, fee }: Laid): Promise<bigint | null> {
    if (role === 'same') return null;
    const unit = await this.units.hold(tx, unitId);
    const reference = `${PAPER_WORDS[paper.kind]} ${paper.number}`;
    const amountNet = side === 'charge' && role === 'whole' ? toCharge(unit, share) : new Decimal(share).minus(fee).toFixed(2);
    if (new Decimal(amountNet).isZero()) return null;
    const kind = side === 'charge' ? 'charged' : 'credited';
    const why = side === 'charge' ? chargeWords(unit, amountNet, share) : new Decimal(fee).isZero() ? '' : `less a fee of ${fee}`;
    return BigInt(await this.acts.take(tx, unit, { kind, amountNet, reference, why }));
  }
}

/** In one order for everybody, so that two people at once wait for each other and not in a ring. */
const byUnit = (a: FoundMatch, b: FoundMatch): number => unitOf(a).localeCompare(unitOf(b));
const unitOf = ({ target }: FoundMatch): string => ('unitId' in target ? target.unitId : '');

const chargedFor = ({ money }: Unit): Decimal =>
  money.filter(({ kind }) => kind === 'charged').reduce((sum, { amountNet }) => sum.plus(amountNet), new Decimal(0));

/** The piece was charged at its order's price when it came: the invoice corrects that, or charges it before it comes. */
const toCharge = (unit: Unit, share: string): string => new Decimal(share).minus(chargedFor(unit)).toFixed(2);

const chargeWords = (unit: Unit, amountNet: string, share: string): string =>
  new Decimal(amountNet).equals(share) ? '' : `corrects ${chargedFor(unit).toFixed(2)} to ${share}`;

async function refuseSecond(write: () => Promise<void>): Promise<void> {
  try {
    await write();
  } catch (error) {
    if (['line_match_one_line_a_unit', 'line_match_once_on_a_unit'].includes(violatedConstraint(error) ?? '')) throw laidAlready();
    throw error;
  }
}
