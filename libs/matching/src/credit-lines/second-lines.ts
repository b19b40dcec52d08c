import { Decimal, toDecimal } from '#libs/money';
import { type KnownNumbers } from '../candidates/find-candidates.ts';
import { claimUnits, type OpenLine, type UnitClaim } from './claim-units.ts';
import { unitEvidence } from './credit-evidence.ts';
import { type CreditUnit, type SecondLine } from './credit-matching.types.ts';
import { expectedCredit } from './expected-credit.ts';
import { type LaidPiece, nearestUnits } from './nearest-units.ts';

/** Lines laid on units that have one already or are settled, and what belongs to no unit at all. */
export interface SecondClaims {
  readonly secondLines: readonly SecondLine[];
  readonly left: readonly OpenLine[];
}

/**
 * Lays the lines that are left on units that have a line already, or are settled: as part of the credit where it all stays
 * within what was charged, as *twice* where not. Second lines by the best assignment, third and further ones on the nearest
 * unit. A reference or part number has to agree exactly; an equal amount alone proposes nothing.
 *
 * @param open - what the first round left
 * @param first - the claims of the first round
 * @param context - all units, numbers that exist, tolerance in hundredths
 */
export function secondLines(
  open: readonly OpenLine[],
  first: readonly UnitClaim[],
  context: { readonly units: readonly CreditUnit[]; readonly known: KnownNumbers; readonly toleranceHundredths: number },
): SecondClaims {
  const claimed = new Set(first.map(({ unit }) => unit.id));
  const taken = context.units.filter((unit) => claimed.has(unit.id) || !expectedCredit(unit).due.greaterThan(0));
  const claimable = taken.map((unit) => ({ unit, evidence: unitEvidence(unit, expectedCredit(unit).byTerms) }));
  const exact = { ...context, exactOnly: true };
  const second = claimUnits(open, claimable, exact);
  const further = nearestUnits(second.left, claimable, exact);
  return { secondLines: proposals([...second.claims, ...further.laid], first, context), left: further.left };
}

function proposals(
  claims: readonly LaidPiece[],
  first: readonly UnitClaim[],
  { toleranceHundredths }: { readonly toleranceHundredths: number },
): SecondLine[] {
  const credited = new Map<string, Decimal>();
  const add = ({ unit, share }: LaidPiece): Decimal => {
    const sum = (credited.get(unit.id) ?? toDecimal(unit.credited ?? '0')).plus(toDecimal(share));
    credited.set(unit.id, sum);
    return sum;
  };
  for (const claim of first) add(claim);
  return claims.map((claim) => {
    const most = toDecimal(claim.unit.charged).plus(new Decimal(toleranceHundredths).div(100));
    const proposal = add(claim).lessThanOrEqualTo(most) ? 'part' : 'twice';
    return { lineId: claim.line.id, unitId: claim.unit.id, share: claim.share, proposal };
  });
}
