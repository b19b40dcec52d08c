import { type Step } from '../template/template.ts';

const TRAINED_ONLY =
  'Hybrid or electric car: its own loops and high voltage. Trained people only, by the vehicle maker’s procedure. This card stops here.';

export const KEYS_TAGGED: Step = {
  key: 'keys-tagged',
  title: 'Keys tagged and hung up',
  help: 'The tag’s number is the job’s short name until the keys go out again.',
  evidence: { kind: 'tick' },
  once: true,
};

export const ODOMETER: Step = {
  key: 'odometer',
  title: 'Odometer read',
  help: 'As shown, in kilometres.',
  evidence: {
    kind: 'reading',
    fact: 'odometerKm',
    unit: 'km',
    range: { low: 0, high: 3_000_000, words: 'Read the odometer again.' },
    instruments: [],
  },
  once: true,
};

export const DAMAGE_NOTED: Step = {
  key: 'damage-noted',
  title: 'Damage and belongings noted',
  help: 'Walk round the car, photograph what is there already; name what was left in it.',
  evidence: { kind: 'tick' },
  once: true,
};

export const THERMOSTAT_KIND: Step = {
  key: 'thermostat-kind',
  title: 'Kind of thermostat and drive',
  help: 'From the vehicle’s data. Only the plain wax kind has one opening temperature.',
  evidence: {
    kind: 'choice',
    fact: 'thermostatKind',
    options: [
      { key: 'wax', words: 'Plain wax' },
      { key: 'heated-wax', words: 'Wax, electrically heated' },
      { key: 'twin', words: 'Two thermostats' },
      { key: 'motor-valve', words: 'Motor valve or electric pump' },
      { key: 'hybrid', words: 'Hybrid or electric car', stops: TRAINED_ONLY },
    ],
  },
  once: true,
};

export const COVERED: Step = {
  key: 'covered',
  title: 'Bay sheet and wings covered',
  help: 'Coolant marks paint and trim: cover what is near, wipe drops off at once.',
  evidence: { kind: 'tick' },
  optional: true,
  once: true,
};

export const PHOTOS_BEFORE: Step = {
  key: 'photos-before',
  title: 'Photographed before access',
  help: 'Hose runs, clips and plugs as they are now: the pictures you will want when it goes back together.',
  evidence: { kind: 'tick' },
  optional: true,
  once: true,
};

export const ACCESS_OFF: Step = {
  key: 'access-off',
  title: 'Taken off to get there',
  help: 'Name each cover, duct or bracket. The list comes back when everything goes on again.',
  evidence: { kind: 'list', fact: 'accessItems' },
  optional: true,
  once: true,
};
