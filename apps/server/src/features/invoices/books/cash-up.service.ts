import { Injectable } from '@nestjs/common';
import { Decimal } from '#libs/money';
import { Audit } from '../../../platform/audit.ts';
import { Clock } from '../../../platform/clock.ts';
import { currentStaff } from '../../../platform/request-context.ts';
import { UnitOfWork } from '../../../platform/unit-of-work.ts';
import type { CashUpDto } from '../dto/cash-up.dto.ts';
import { badFigure, countedMeanwhile } from '../invoices.errors.ts';
import { METHODS } from '../money/method-words.ts';
import { BooksRepository, type TakenMoney } from './books.repository.ts';
import { differenceOf, expectedByMethod } from './cash-up-lines.ts';

/** The payments that the page showed: all up to its last one. What came in while it was counted waits for the next time. */
function shownTo(taken: readonly TakenMoney[], upTo: string): readonly TakenMoney[] | undefined {
  if (upTo === '') return [];
  const last = taken.findIndex(({ id }) => id === upTo);
  return last === -1 ? undefined : taken.slice(0, last + 1);
}

/** What was counted against what was taken since the last time; each payment is counted once. */
@Injectable()
export class CashUpService {
  constructor(
    private readonly books: BooksRepository,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  async close(input: CashUpDto): Promise<void> {
    const figure = (typed: string): string => new Decimal(typed.replace(',', '.')).toFixed(2);
    const banked = figure(input.banked);
    const floatAfter = new Decimal(figure(input.cash)).minus(banked);
    if (floatAfter.isNegative()) throw badFigure('banked', 'More goes to the bank than was counted: check both figures.');
    await this.unitOfWork.run(async (tx) => {
      await this.books.lockCashUps(tx);
      const taken = shownTo(await this.books.uncounted(tx), input.upTo);
      if (taken === undefined) throw countedMeanwhile();
      const floatBefore = await this.books.lastFloat(tx);
      const expected = expectedByMethod(taken, floatBefore);
      const lines = METHODS.map((method) => {
        const line = { method, expected: expected[method], counted: figure(input[method]) };
        return { ...line, why: Number(differenceOf(line)) === 0 ? '' : input.why };
      });
      if (lines.some((line) => line.why === '' && Number(differenceOf(line)) !== 0))
        throw badFigure('why', 'The count differs from what was taken: say why, or that nobody knows.');
      const id = await this.books.addCashUp(tx, {
        at: this.clock.now(),
        byId: currentStaff().staffId,
        floatBefore,
        banked,
        floatAfter: floatAfter.toFixed(2),
        lines,
        paymentIds: taken.map((money) => money.id),
      });
      const differences = Object.fromEntries(lines.map((line) => [line.method, differenceOf(line)]));
      await this.audit.record(tx, { action: 'counted', subject: 'till', subjectId: id, after: { ...differences, why: input.why } });
      return null;
    });
  }
}
