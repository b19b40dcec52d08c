import { ANSWERS_LINE } from './arrival-reasons.ts';
import { type Unit } from './unit.ts';

export interface LineAccount {
  readonly ordered: number;
  readonly calledOff: number;
  readonly neverCame: number;
  readonly stillExpected: number;
  readonly answered: number;
  /** ordered = called-off + never-came + still expected + answered */
  readonly closes: boolean;
}

/**
 * How an order line stands. Wrong, damaged and surplus pieces that came with it don't answer it.
 *
 * @param ordered Pieces ordered
 * @param units The line's units
 * @returns The account, and whether it closes
 * @example lineAccount(1, [newUnit('u1', 'ordered', { lineId: 'l1' })]).stillExpected // 1
 */
export function lineAccount(ordered: number, units: readonly Pick<Unit, 'arrivalReason' | 'place'>[]): LineAccount {
  const own = units.filter((unit) => ANSWERS_LINE[unit.arrivalReason]);
  const at = (place: Unit['place']): number => own.filter((unit) => unit.place === place).length;
  const [calledOff, neverCame, stillExpected] = [at('called-off'), at('never-came'), at('expected')];
  const answered = own.length - calledOff - neverCame - stillExpected;
  return { ordered, calledOff, neverCame, stillExpected, answered, closes: ordered === own.length };
}
