import { allocate, type DecimalString, toAmount, toDecimal } from '#libs/money';
import { normaliseReference } from '../candidates/normalise-reference.ts';
import { type UnitClaim } from './claim-units.ts';
import { type CreditLine } from './credit-matching.types.ts';

/** Restocking fees by unit, as amounts above 0, and the units each fee line was shared among. */
export interface SharedFees {
  readonly feeOfUnit: ReadonlyMap<string, DecimalString>;
  readonly unitsOfLine: ReadonlyMap<string, readonly string[]>;
}

/**
 * Shares separate restocking lines among the units credited on the same document, by their credits; a fee line with a part
 * number among the units of that part alone.
 *
 * @param fees - restocking lines
 * @param claims - units credited
 */
export function shareFees(fees: readonly CreditLine[], claims: readonly UnitClaim[]): SharedFees {
  const feeOfUnit = new Map<string, DecimalString>();
  const unitsOfLine = new Map<string, string[]>();
  for (const fee of fees) {
    const concerned = claims.filter((claim) => concerns(fee, claim) && toDecimal(claim.share).greaterThan(0));
    unitsOfLine.set(
      fee.id,
      concerned.map(({ unit }) => unit.id),
    );
    if (concerned.length === 0) continue;
    const places = Math.max(2, fee.net.split('.')[1]?.length ?? 0);
    const shares = allocate(
      toDecimal(fee.net).abs().toFixed(places),
      concerned.map(({ share }) => share),
      { places },
    );
    for (const [index, { unit }] of concerned.entries()) {
      const soFar = toDecimal(feeOfUnit.get(unit.id) ?? '0');
      feeOfUnit.set(unit.id, toAmount(soFar.plus(shares[index] ?? '0'), places));
    }
  }
  return { feeOfUnit, unitsOfLine };
}

function concerns(fee: CreditLine, { line, unit }: UnitClaim): boolean {
  if (fee.documentId !== line.documentId) return false;
  const part = normaliseReference(fee.part ?? '');
  return part === '' || unit.parts.some((each) => normaliseReference(each) === part);
}
