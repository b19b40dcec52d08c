import { type Step, type Template } from '../template/template.ts';
import { HOSES_ON, TORQUED } from './fitting-steps.ts';
import { CAP_OFF, DRAINED, KEPT, LEVEL_ON_ARRIVAL, MEASURED_COLD, TRAY } from './opening-steps.ts';
import { STRENGTH_METERS } from './instruments.ts';
import { ACCESS, ARRIVAL, FILLING, LEAVING, NEXT_MORNING, RUNNING, SETTLING } from './phases.ts';

const STRENGTH_BEFORE: Step = {
  key: 'strength-before',
  title: 'Old strength read',
  help: 'From the tank, cold. What stays in the block keeps this strength, and the recipe counts it.',
  evidence: {
    kind: 'reading',
    fact: 'strengthBeforeC',
    unit: '°C',
    range: { low: -75, high: 0, words: 'The freezing point the scale shows, at or below zero.' },
    instruments: STRENGTH_METERS,
  },
  behind: ['safe-to-open'],
  optional: true,
  once: true,
};

const CLOSED: Step = {
  ...TORQUED,
  title: 'Drain closed and torqued',
  help: 'Plug with a new seal at the manual’s value, with its document and page. Where a hose or a tap was opened and the manual gives no value: pass without, “the manual says nothing about it”.',
  behind: ['safe-to-open'],
};

/** Coolant drained and renewed. A flush is the same round again with water: after the hot run the job goes back to be opened, cold first. */
export const COOLANT_CHANGE: Template = {
  key: 'coolant-change',
  version: 1,
  name: 'Coolant change',
  about:
    'Coolant drained and renewed. To flush, fill with water, run hot, let it cool, go back to be opened: once per cycle. Not for hybrid or electric cars.',
  phases: [
    ARRIVAL,
    { ...ACCESS, minutes: 10 },
    {
      key: 'opening',
      title: 'Open and drain',
      stageBefore: 'standing',
      stageAfter: 'opened',
      engine: 'cold',
      minutes: 30,
      place: 'bay',
      attendance: 'hands-on',
      steps: [MEASURED_COLD, LEVEL_ON_ARRIVAL, TRAY, CAP_OFF, STRENGTH_BEFORE, DRAINED, KEPT],
    },
    {
      key: 'closing',
      title: 'Close',
      stageBefore: 'opened',
      stageAfter: 'closed-up',
      engine: 'cold',
      minutes: 10,
      place: 'bay',
      attendance: 'hands-on',
      steps: [CLOSED, HOSES_ON],
    },
    FILLING,
    RUNNING,
    SETTLING,
    LEAVING,
    NEXT_MORNING,
  ],
  stageMarks: [
    { stage: 'standing', when: 'any', steps: ['keys-tagged', 'odometer', 'damage-noted'] },
    { stage: 'opened', when: 'any', steps: ['cap-off', 'drained'] },
    { stage: 'closed-up', when: 'any', steps: ['torqued'] },
    { stage: 'filled', when: 'any', steps: ['first-fill'] },
    { stage: 'run-hot', when: 'any', steps: ['run-hot'] },
    { stage: 'settling', when: 'any', steps: ['left-to-cool'] },
    { stage: 'settled', when: 'all', steps: ['cold-level', 'strength'] },
    { stage: 'keys-out', when: 'any', steps: ['keys-out'] },
  ],
};
