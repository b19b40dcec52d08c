import { formatFigure, formatTemperature } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { refuse, type Grounds, type Outcome, type Warning } from '../outcome.ts';
import { SOURCE } from '../sources.ts';

/** Opened at most this warm, the reading's whole uncertainty counted. Derived from published scald times; the manual rules. */
export const SAFE_TO_OPEN_C = 50;

export type ThermometerKind = 'contact' | 'infrared' | 'engine-sensor';

export interface CoolantReading {
  readonly tempC: number;
  /** Full expanded uncertainty U (coverage 2) of the instrument, K. */
  readonly expandedUncertaintyK: number;
  readonly instrument: ThermometerKind;
  /** Where it was read, in the person's words. */
  readonly place?: string | undefined;
  /** Infrared reads low there. */
  readonly isBareMetal?: boolean | undefined;
}

export interface SafeToOpenInput {
  /** Left out: not measured. */
  readonly reading?: CoolantReading | undefined;
  readonly pressure: 'none' | 'present' | 'not-checked';
  /** The upper hose yields to the hand. Where it doesn't, pressure is not ruled out, whatever else was said. */
  readonly isHoseSoft?: boolean | undefined;
  /** The level was low on arrival: the engine's own sensor may hang in air. */
  readonly isLevelLow?: boolean | undefined;
  /** Nobody else is there: no exception is possible. */
  readonly isOnePersonSite?: boolean | undefined;
}

export interface SafeToOpen extends Grounds {
  readonly outcome: 'safe' | 'over' | 'unsure' | 'not-measured' | 'under-pressure' | 'pressure-not-checked';
  readonly mayOpen: 'yes' | 'with-second-person-and-reason' | 'no';
  readonly limitC: number;
  /** The reading with its uncertainty on either side; null where none counts. */
  readonly band: { readonly lowC: number; readonly highC: number } | null;
  readonly text: string;
}

function countsFor(reading: CoolantReading | undefined): CoolantReading | undefined {
  if (reading === undefined) return undefined;
  return reading.instrument === 'infrared' && reading.isBareMetal === true ? undefined : reading;
}

function judgeTemperature(reading: CoolantReading | undefined): 'safe' | 'over' | 'unsure' | 'not-measured' {
  if (reading === undefined) return 'not-measured';
  if (reading.tempC + reading.expandedUncertaintyK <= SAFE_TO_OPEN_C) return 'safe';
  return reading.tempC - reading.expandedUncertaintyK > SAFE_TO_OPEN_C ? 'over' : 'unsure';
}

function judge(input: SafeToOpenInput, reading: CoolantReading | undefined): SafeToOpen['outcome'] {
  if (input.pressure === 'present') return 'under-pressure';
  if (input.pressure === 'not-checked' || input.isHoseSoft === false) return 'pressure-not-checked';
  return judgeTemperature(reading);
}

function permission(outcome: SafeToOpen['outcome'], isOnePersonSite: boolean): SafeToOpen['mayOpen'] {
  switch (outcome) {
    case 'safe':
      return 'yes';
    case 'under-pressure':
    case 'pressure-not-checked':
      return 'no';
    case 'over':
    case 'unsure':
    case 'not-measured':
      return isOnePersonSite ? 'no' : 'with-second-person-and-reason';
  }
}

function textOf(outcome: SafeToOpen['outcome'], reading: CoolantReading | undefined, isOnePersonSite: boolean): string {
  const limit = formatTemperature(SAFE_TO_OPEN_C, { unit: '°C' });
  const read = reading ? `${formatFigure(reading.tempC, 1)} ± ${formatFigure(reading.expandedUncertaintyK, 1)} °C` : '';
  const wait = isOnePersonSite
    ? 'Wait and measure again.'
    : 'Wait and measure again, or open with a second person and the reason written down.';
  switch (outcome) {
    case 'safe':
      return `${read}: at most ${limit} with the whole uncertainty counted, and no pressure. Cover the cap with a cloth and turn it slowly.`;
    case 'over':
      return `${read}: hotter than ${limit}. ${wait}`;
    case 'unsure':
      return `${read}: may be hotter than ${limit}. ${wait}`;
    case 'not-measured':
      return `Not measured. ${wait}`;
    case 'under-pressure':
      return 'Under pressure: do not open, whoever is there and however cold it is. Wait until the pressure is gone.';
    case 'pressure-not-checked':
      return 'Not known to be free of pressure: press the upper hose when it has cooled. Do not open before it is soft.';
  }
}

function readingWarnings(input: SafeToOpenInput): readonly Warning[] {
  const { reading, isHoseSoft, isLevelLow, pressure } = input;
  const warnings: Warning[] = [];
  if (reading?.instrument === 'infrared' && reading.isBareMetal === true) {
    const text =
      'Infrared on bare metal reads low: the reading does not count. Read on a rubber hose, on matt tape, or with a contact thermometer.';
    warnings.push({ code: 'infrared-on-bare-metal', text });
  }
  if (reading?.instrument === 'engine-sensor') {
    const air = isLevelLow === true ? ' The level was low: it may hang in air and read low.' : ' With a low level it hangs in air.';
    warnings.push({
      code: 'engine-sensor',
      text: `The engine's own sensor may be the fault itself.${air} Compare with a second instrument.`,
    });
  }
  if (isHoseSoft === false && pressure !== 'present') {
    warnings.push({ code: 'hose-not-soft', text: 'A hose that is not soft may stand under pressure. Check again before opening.' });
  }
  return warnings;
}

function check(reading: CoolantReading | undefined): ReturnType<typeof checkNumber> {
  if (reading === undefined) return undefined;
  const uncertainty = { field: 'reading.expandedUncertaintyK', name: "The instrument's uncertainty", unit: 'K', above: 0, most: 50 };
  return (
    checkNumber(reading.tempC, { field: 'reading.tempC', name: 'The reading', unit: '°C', least: -60, most: 300 }) ??
    checkNumber(reading.expandedUncertaintyK, uncertainty)
  );
}

/**
 * Whether the cooling system may be opened: the reading with its full uncertainty at most 50 °C, and no pressure.
 *
 * Over, unsure or not measured needs a second person and a reason, and on a one-person site waiting. Pressure knows no
 * exception, and pressure that nobody checked, or a hose that is not soft, counts as pressure. The vehicle's manual rules where it asks for more.
 *
 * @param input Reading with instrument and uncertainty, pressure, and who is there
 * @returns The outcome and who may open; refused for a reading that can't be
 * @example safeToOpen({ reading: { tempC: 47, expandedUncertaintyK: 2, instrument: 'contact' }, pressure: 'none' }) // 'safe'
 */
export function safeToOpen(input: SafeToOpenInput): Outcome<SafeToOpen> {
  const problem = check(input.reading);
  if (problem) return refuse(problem);
  const reading = countsFor(input.reading);
  const isOnePersonSite = input.isOnePersonSite === true;
  const outcome = judge(input, reading);
  const place = input.reading?.place;
  return {
    ok: true,
    outcome,
    mayOpen: permission(outcome, isOnePersonSite),
    limitC: SAFE_TO_OPEN_C,
    band: reading ? { lowC: reading.tempC - reading.expandedUncertaintyK, highC: reading.tempC + reading.expandedUncertaintyK } : null,
    text: textOf(outcome, reading, isOnePersonSite),
    assumptions: [
      "The vehicle's manual rules where it asks for more.",
      ...(input.reading === undefined ? [] : [place === undefined ? 'Place of reading: not said.' : `Read at: ${place}.`]),
    ],
    warnings: readingWarnings(input),
    sources: [SOURCE.scald],
  };
}
