import { type Step } from '../template/template.ts';
import { COLD_PLACES, THERMOMETERS } from './instruments.ts';

const LITRES = { low: 0, high: 60, words: 'Litres, not millilitres.' };

export const MEASURED_COLD: Step = {
  key: 'measured-cold',
  title: 'Measure the engine cold',
  help: 'Engine off, cap stays on. Contact probe on the top hose; squeeze the hose: soft means no pressure. Limit 50 °C with the ± added; a lower limit in the vehicle maker’s manual rules.',
  evidence: {
    kind: 'cold-reading',
    fact: 'coldReadingC',
    range: { low: -40, high: 150, words: 'Degrees Celsius: read the instrument again.' },
    instruments: THERMOMETERS,
    places: COLD_PLACES,
  },
  hold: 'safe-to-open',
  caution: 'Hot coolant under pressure scalds: never open it hot. The fan can start by itself with the engine off.',
};

export const LEVEL_ON_ARRIVAL: Step = {
  key: 'level-on-arrival',
  title: 'Level on arrival',
  help: 'Against the cold mark, before anything is opened: how much is missing. What is missing now is not in what drains, and the recipe needs both.',
  evidence: {
    kind: 'level',
    fact: 'missingOnArrivalL',
    range: { low: -3000, high: 20_000, words: 'Millilitres below the cold mark; above it with a minus.' },
  },
  once: true,
};

export const TRAY: Step = {
  key: 'tray',
  title: 'Tray under the drain',
  help: 'Larger than what will come out, clean if the coolant is to go back in.',
  evidence: { kind: 'tick' },
  figures: ['tray', 'drainVolume'],
};

export const CAP_OFF: Step = {
  key: 'cap-off',
  title: 'Cap off slowly, cloth over it',
  help: 'To the first stop, wait, then off. Stop if it hisses.',
  evidence: { kind: 'tick' },
  behind: ['safe-to-open'],
  caution:
    'Face and forearms away from the cap. Gloves and eye protection; coolant is poisonous and tastes sweet: keep children and animals away.',
};

export const DRAINED: Step = {
  key: 'drained',
  title: 'Drain, measure what came out',
  help: 'Litres in the tray. “About” is allowed and widens the tolerance of the fill.',
  evidence: { kind: 'litres', fact: 'drainedL', range: LITRES },
  behind: ['safe-to-open'],
  figures: ['drainVolume', 'tray'],
  caution: 'Never down a drain. Soak up spills, bag them as waste, dry the floor: wet coolant is slippery.',
};

export const KEPT: Step = {
  key: 'kept',
  title: 'Kept for this car',
  help: 'Litres of what drained that are clean enough to go back in; 0 if none. The rest is waste.',
  evidence: { kind: 'litres', fact: 'keptL', range: LITRES },
  behind: ['safe-to-open'],
};

export const HOUSING_OFF: Step = {
  key: 'housing-off',
  title: 'Housing off, thermostat out',
  help: 'Note which way it sat and where its bleed device pointed. Bolts laid out in their places; a damaged thread is a finding.',
  evidence: { kind: 'tick' },
  behind: ['safe-to-open'],
};
