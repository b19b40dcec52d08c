/** Acts at which coolant work can hurt. */
export type CautionMoment = 'opening' | 'handling' | 'spill' | 'waste' | 'running' | 'lifting';

export interface Caution {
  readonly code: string;
  readonly moment: CautionMoment;
  readonly text: string;
  readonly source: string;
}

const SCALD = 'Published scald times (anti-scald table): 60 °C burns in 3 to 5 seconds.';
const ETHYLENE = 'NIOSH card and ATSDR guide on ethylene glycol.';
const PRACTICE = 'Common practice, no source.';

/**
 * Cautions to stand beside the act. The vehicle's manual, the product's safety data sheet and local rules go further.
 */
export const CAUTIONS: readonly Caution[] = [
  { code: 'hot', moment: 'opening', text: 'Never open a hot system: at 60 °C coolant burns the skin within seconds.', source: SCALD },
  { code: 'pressure', moment: 'opening', text: 'Never open under pressure. Cloth over the cap, turn slowly, face away.', source: PRACTICE },
  {
    code: 'burn',
    moment: 'opening',
    text: 'Burnt: cool under running water for 20 minutes, cover, and get medical advice.',
    source: 'Motoring safety article.',
  },
  {
    code: 'toxic',
    moment: 'handling',
    text: 'Coolant is poisonous and tastes sweet: keep it from children and animals, never in drinking bottles. Swallowed: medical help at once.',
    source: ETHYLENE,
  },
  {
    code: 'gloves',
    moment: 'handling',
    text: 'Gloves and eye protection. In the eyes: rinse for 20 minutes and get help.',
    source: 'ECHA dossier on ethylene glycol.',
  },
  {
    code: 'spill',
    moment: 'spill',
    text: 'Absorb a spill, bag it as waste and dry the floor: it is slippery and poisons animals.',
    source: PRACTICE,
  },
  {
    code: 'drain',
    moment: 'waste',
    text: 'Never down a drain or on the ground. Keep used coolant apart from oil, fuel and brake fluid; local rules say how it is classed.',
    source: 'ECHA dossier on ethylene glycol; guidance of gov.uk on vehicle wastes.',
  },
  {
    code: 'fan',
    moment: 'running',
    text: 'The fan can start by itself, even with the engine off. Hands, hair and cloths away.',
    source: PRACTICE,
  },
  { code: 'exhaust', moment: 'running', text: 'Run engines in the open or with the exhaust led outside.', source: PRACTICE },
  {
    code: 'never-top-up-running',
    moment: 'running',
    text: 'Never top up a running engine: stop it and let it cool first.',
    source: PRACTICE,
  },
  { code: 'lifting', moment: 'lifting', text: 'Never under a car that stands on a jack alone.', source: PRACTICE },
];
