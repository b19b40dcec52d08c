import { type Step } from '../template/template.ts';

export const FIRST_FILL: Step = {
  key: 'first-fill',
  title: 'First fill',
  help: 'Jug by jug as the recipe says, slowly, so that air can get out. One tap per jug; close the step when no more goes in.',
  evidence: { kind: 'jugs', fill: 'first-fill' },
  behind: ['closed-and-torqued'],
  figures: ['recipe', 'drainVolume', 'tolerance', 'capacity'],
  caution: 'The right technology by the vehicle maker’s approval, not by colour. Gloves; wipe up what runs over.',
};

export const BLED: Step = {
  key: 'bled',
  title: 'Bled as the manual says',
  help: 'The vehicle maker’s procedure for this engine. Say which one it was.',
  evidence: {
    kind: 'choice',
    fact: 'bleedMethod',
    options: [
      { key: 'open-cap', words: 'Open cap and topping up' },
      { key: 'vacuum', words: 'Filled under vacuum' },
      { key: 'screws', words: 'Bleed screws in order' },
      { key: 'funnel', words: 'Raised funnel' },
      { key: 'pump-routine', words: 'Pump routine by the tester' },
    ],
  },
  behind: ['closed-and-torqued'],
};

export const HELD_COLD: Step = {
  key: 'held-cold',
  title: 'Pressure or vacuum held cold',
  help: 'Before the start, to the cap’s rating at most, for as long as the tester’s maker says. Walk along the joints with a lamp.',
  evidence: {
    kind: 'choice',
    fact: 'heldCold',
    options: [
      { key: 'pressure-held', words: 'Pressure held' },
      { key: 'vacuum-held', words: 'Vacuum held' },
      { key: 'fell', words: 'Fell: look for the leak' },
    ],
  },
  behind: ['closed-and-torqued'],
};
