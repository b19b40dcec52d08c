import { TECHNOLOGIES, type CoolantTechnology } from '../data/technologies.ts';
import { type Grounds, type Warning } from '../outcome.ts';
import { SOURCE } from '../sources.ts';

export interface MixingInput {
  /** What is in the car; left out where nobody knows. */
  readonly present?: CoolantTechnology | undefined;
  /** What is to be added. */
  readonly added: CoolantTechnology;
  /** Does the vehicle maker approve what is to be added? Left out where nobody looked it up. */
  readonly isApprovedByVehicleMaker?: boolean | undefined;
  /** Is everything drained and flushed first? */
  readonly isFlushed?: boolean | undefined;
}

export interface MixingAdvice extends Grounds {
  readonly verdict: 'suitable' | 'flush-first' | 'not-approved' | 'look-up-first';
  /** The shorter life counts when both are in: its years. */
  readonly serviceYears: number;
  readonly text: string;
}

function named(technology: CoolantTechnology): string {
  return TECHNOLOGIES[technology].abbreviation;
}

function judge(input: MixingInput): { verdict: MixingAdvice['verdict']; text: string } {
  const { present, added, isApprovedByVehicleMaker, isFlushed } = input;
  if (isApprovedByVehicleMaker === false) {
    return { verdict: 'not-approved', text: `The vehicle maker doesn't approve this ${named(added)} coolant. Take one that is approved.` };
  }
  if (isApprovedByVehicleMaker === undefined) {
    return { verdict: 'look-up-first', text: 'Look up which coolant the vehicle maker approves: that counts, not class or colour.' };
  }
  if (isFlushed === true || present === added) return { verdict: 'suitable', text: `${named(added)} approved by the vehicle maker.` };
  const what = present === undefined ? 'What is in the car is not known' : `${named(present)} is in the car`;
  return {
    verdict: 'flush-first',
    text: `${what}: flush before filling ${named(added)}. Mixed types can drop out as sludge and lose their life.`,
  };
}

/**
 * Whether a coolant may go into this car, with what is in it. The vehicle maker's approval is what counts; the class
 * only warns, and colour says nothing.
 *
 * @param input Technologies, the approval, and whether the system is flushed first
 * @example mixingAdvice({ present: 'inorganic', added: 'organic', isApprovedByVehicleMaker: true }).verdict // 'flush-first'
 */
export function mixingAdvice(input: MixingInput): MixingAdvice {
  const { present, added, isFlushed } = input;
  const { verdict, text } = judge(input);
  const own = TECHNOLOGIES[added].serviceYears;
  const isMixed = isFlushed !== true && present !== added;
  const shortest = isMixed ? Math.min(own, TECHNOLOGIES[present ?? 'inorganic'].serviceYears) : own;
  const warnings: Warning[] = isMixed
    ? [{ code: 'mixing-technologies', text: `Mixed with another type it lasts ${shortest} years at most.` }]
    : [];
  return {
    verdict,
    serviceYears: shortest,
    text,
    assumptions: [
      'Colour is no standard: the dye is the choice of its maker.',
      ...(present === undefined ? ['Present coolant: not known.'] : []),
    ],
    warnings,
    sources: [SOURCE.technology],
  };
}
