import { AGREES, type Evidence, type MatchTolerances, type ScorePoints } from './evidence.types.ts';

/** Beyond half as much off, an amount says nothing. */
const AMOUNT_REACH = 0.5;

/**
 * Scores pairs whose references and parts have been looked up already. Additive points for agreement and against disagreement,
 * after the pattern of record linkage (Fellegi and Sunter, J. Am. Stat. Assoc. 64, 1969, from memory); the points themselves
 * are common practice, no source.
 *
 * One scorer is used for a million pairs, so the result is left in its fields rather than made into an object each time.
 */
export class PairScorer {
  /** Points of the last pair. */
  score = 0;
  /** Agreement bits of the last pair. */
  agreement = 0;

  constructor(
    private readonly points: ScorePoints,
    private readonly tolerances: MatchTolerances,
  ) {}

  /**
   * Scores one pair.
   *
   * @param row - one side
   * @param column - the other
   * @param found - bits of the references and parts that agree
   */
  judge(row: Evidence, column: Evidence, found: number): void {
    this.score = 0;
    this.agreement = found;
    this.judgeReference(row, column);
    this.judgePart(row, column);
    this.judgeAmount(row.hundredths, column.hundredths);
    if (row.day !== null && column.day !== null) this.judgeDays(Math.abs(row.day - column.day));
    if (row.kind !== null && column.kind !== null) this.judgeKind(row.kind === column.kind);
  }

  private judgeReference(row: Evidence, column: Evidence): void {
    if ((this.agreement & AGREES.reference) !== 0) this.score += this.points.reference;
    else if ((this.agreement & AGREES.referenceNear) !== 0) this.score += this.points.referenceNear;
    else if (row.references.length > 0 && column.references.length > 0) this.score -= this.points.referenceConflict;
  }

  private judgePart(row: Evidence, column: Evidence): void {
    if ((this.agreement & AGREES.part) !== 0) this.score += this.points.part;
    else if ((this.agreement & AGREES.partNear) !== 0) this.score += this.points.partNear;
    else if (row.parts.length > 0 && column.parts.length > 0) {
      this.score -= this.points.partConflict;
      this.agreement |= AGREES.conflict;
    }
  }

  private judgeAmount(one: number, other: number): void {
    const off = Math.abs(one - other);
    if (off <= this.tolerances.hundredths) {
      this.score += this.points.amount;
      this.agreement |= AGREES.amount;
      return;
    }
    const share = off / Math.max(one, other, 1);
    this.score += Math.max(0, Math.floor(this.points.amountNear * (1 - share / AMOUNT_REACH)));
  }

  private judgeDays(apart: number): void {
    this.score += Math.max(0, Math.floor(this.points.date * (1 - apart / this.tolerances.days)));
  }

  private judgeKind(isSame: boolean): void {
    if (isSame) {
      this.score += this.points.kind;
      this.agreement |= AGREES.kind;
      return;
    }
    this.score -= this.points.kindConflict;
    this.agreement |= AGREES.conflict;
  }
}
