import { toAmount, toDecimal } from '#libs/money';
import { isNegativeAmount } from '../lines/is-negative-amount.ts';
import { checkCreditMatching } from './check-credit-matching.ts';
import { claimUnits, type UnitClaim } from './claim-units.ts';
import { creditDifference } from './credit-difference.ts';
import { knownNumbers, unitEvidence } from './credit-evidence.ts';
import {
  type CreditDifference,
  type CreditMatch,
  type CreditMatching,
  type CreditMatchingQuestion,
  type UnknownLine,
} from './credit-matching.types.ts';
import { unsureReasons } from './credit-points.ts';
import { expectedCredit } from './expected-credit.ts';
import { missingCredits } from './missing-credits.ts';
import { secondLines } from './second-lines.ts';
import { shareFees } from './share-fees.ts';
import { shareNet } from './share-net.ts';
import { sortCreditLines } from './sort-credit-lines.ts';

const DEFAULT_TOLERANCE = '0.02';

/**
 * Matches the lines of suppliers' credit notes with the units that money is due for.
 *
 * Best assignment overall on reference, part number, amount and date; a line of quantity n claims n units, a unit gets at most
 * one line. A further line on the same unit is proposed as part of the credit or as twice, for a person. Equal scores, weak or
 * contradicting evidence are *unsure*, for a person too. Carriage, fees, payments and the like are recognised; separate
 * restocking lines are shared among the units of their document. Every difference is named.
 *
 * @param question - lines (net), units, today, tolerance
 * @returns matches and differences; every piece of every line is in exactly one of matches, secondLines, recognised, unknown
 * @throws MatchingInputError for amounts, dates, quantities or ids that can't be used
 * @example
 * matchCreditLines({
 *   lines: [{ id: 'L1', reference: 'RN-0042', part: 'TX 5482', quantity: 1, net: '25.00' }],
 *   units: [{ id: 'U1', references: ['RN-0042'], parts: ['TX-5482'], charged: '30.00' }],
 * }).differences; // [{ kind: 'short', lineId: 'L1', unitId: 'U1', amount: '5.00', words: '5.00 missing: 25.00 came, 30.00 was due.' }]
 */
export function matchCreditLines(question: CreditMatchingQuestion): CreditMatching {
  checkCreditMatching(question);
  const { units, asOf } = question;
  const tolerance = toDecimal(question.amountTolerance ?? DEFAULT_TOLERANCE);
  const context = { units, known: knownNumbers(units), toleranceHundredths: Math.floor(tolerance.times(100).toNumber()) };
  const { credits, others } = sortCreditLines(question.lines);
  const open = units.filter((unit) => expectedCredit(unit).due.greaterThan(0));
  const claimable = open.map((unit) => ({ unit, evidence: unitEvidence(unit, expectedCredit(unit).due) }));
  const fees = others.flatMap(({ line, kind }) => (kind === 'restocking' && isNegativeAmount(line.net) ? [line] : []));
  const pieces = credits.map((line) => ({ line, shares: shareNet(line.net, line.quantity) }));
  const first = claimUnits(pieces, claimable, { ...context, exactOnly: false });
  const second = secondLines(first.left, first.claims, context);
  const { feeOfUnit, unitsOfLine } = shareFees(fees, first.claims);
  const unknown = second.left.map(({ line, shares }): UnknownLine => ({ lineId: line.id, quantity: shares.length, net: sumOf(shares) }));
  const claimed = new Set(first.claims.map(({ unit }) => unit.id));
  const unmatched = open.filter(({ id }) => !claimed.has(id));
  const strayFees = fees.filter(({ id }) => unitsOfLine.get(id)?.length === 0);
  return {
    matches: first.claims.map((claim) => creditMatch(claim, feeOfUnit)),
    secondLines: second.secondLines,
    recognised: others.map(({ line, kind }) => ({ lineId: line.id, kind, net: line.net, unitIds: unitsOfLine.get(line.id) ?? [] })),
    unknown,
    unmatchedUnits: unmatched.map(({ id }) => id),
    differences: [
      ...first.claims.flatMap((claim) => {
        const money = { share: toDecimal(claim.share), fee: toDecimal(feeOfUnit.get(claim.unit.id) ?? '0'), tolerance };
        return creditDifference(claim.line, claim.unit, money) ?? [];
      }),
      ...second.secondLines
        .filter(({ proposal }) => proposal === 'twice')
        .map(({ lineId, unitId, share }): CreditDifference => ({
          kind: 'twice',
          lineId,
          unitId,
          amount: toAmount(share),
          words: `${toAmount(share)} credited once more for a unit that has its credit.`,
        })),
      ...unknown.map(({ lineId, quantity, net }) =>
        unknownDifference(lineId, `${quantity} of the line’s pieces, ${toAmount(net)}, belong to no unit`, { net }),
      ),
      ...strayFees.map((line) =>
        unknownDifference(line.id, `A fee of ${toAmount(toDecimal(line.net).abs())} for no unit on its document`, line),
      ),
      ...missingCredits(unmatched, { asOf, tolerance }),
    ],
  };
}

function creditMatch(
  { line, unit, share, agreement, isOnlyBest, alternatives }: UnitClaim,
  feeOfUnit: ReadonlyMap<string, string>,
): CreditMatch {
  const reasons = unsureReasons(agreement, isOnlyBest);
  return {
    lineId: line.id,
    unitId: unit.id,
    share,
    fee: feeOfUnit.get(unit.id) ?? '0.00',
    expected: toAmount(expectedCredit(unit).due),
    certainty: reasons.length === 0 ? 'sure' : 'unsure',
    reasons,
    alternatives,
  };
}

function unknownDifference(lineId: string, words: string, { net }: { readonly net: string }): CreditDifference {
  return { kind: 'unknown', lineId, amount: toAmount(toDecimal(net).abs()), words: `${words}.` };
}

function sumOf(shares: readonly string[]): string {
  const places = Math.max(...shares.map((share) => share.split('.')[1]?.length ?? 0));
  return toAmount(
    shares.reduce((sum, share) => sum.plus(toDecimal(share)), toDecimal('0')),
    places,
  );
}
