import { checkNumber } from '../checks/check-number.ts';
import { refuse, type Grounds, type Outcome } from '../outcome.ts';
import { SOURCE } from '../sources.ts';

export interface ColdEnough extends Grounds {
  readonly isCold: boolean;
  readonly differenceK: number;
  readonly limitK: number;
}

const LEVEL_LIMIT_K = 8;
const START_LIMIT_K = 6;

function within(
  coolantC: number,
  other: { readonly tempC: number; readonly field: string; readonly name: string },
  limitK: number,
): Outcome<ColdEnough> {
  const bounds = { unit: '°C', least: -60, most: 200 };
  const problem =
    checkNumber(coolantC, { ...bounds, field: 'coolantC', name: "The coolant's temperature" }) ??
    checkNumber(other.tempC, { ...bounds, field: other.field, name: other.name });
  if (problem) return refuse(problem);
  const differenceK = coolantC - other.tempC;
  return { ok: true, isCold: Math.abs(differenceK) <= limitK, differenceK, limitK, assumptions: [], warnings: [], sources: [] };
}

/**
 * Whether the coolant is cold enough to judge its level: within 8 K of the air, on either side.
 *
 * @param coolantC Coolant, °C
 * @param airC Air around the car, °C
 * @example coldForLevel(21, 15) // isCold true
 */
export function coldForLevel(coolantC: number, airC: number): Outcome<ColdEnough> {
  const found = within(coolantC, { tempC: airC, field: 'airC', name: "The air's temperature" }, LEVEL_LIMIT_K);
  return found.ok ? { ...found, sources: [SOURCE.coldLevel] } : found;
}

/**
 * Whether a start counts as a cold start: coolant within 6 K of the intake air, on either side.
 *
 * @param coolantC Coolant before the start, °C
 * @param intakeC Intake air, °C
 * @example coldStart(22, 15) // isCold false
 */
export function coldStart(coolantC: number, intakeC: number): Outcome<ColdEnough> {
  const found = within(coolantC, { tempC: intakeC, field: 'intakeC', name: "The intake air's temperature" }, START_LIMIT_K);
  return found.ok ? { ...found, sources: [SOURCE.coldStart] } : found;
}
