import { type Template } from '../template/template.ts';
import { FITTED, HOSES_ON, RECESS_CLEAN, REMOVED_PART, TORQUED, VARIANT } from './fitting-steps.ts';
import { CAP_OFF, DRAINED, HOUSING_OFF, KEPT, LEVEL_ON_ARRIVAL, MEASURED_COLD, TRAY } from './opening-steps.ts';
import { ACCESS, ARRIVAL, FILLING, LEAVING, NEXT_MORNING, RUNNING, SETTLING } from './phases.ts';

/** Thermostat replacement, from the keys on the hook to the level next morning. */
export const THERMOSTAT_JOB: Template = {
  key: 'thermostat',
  version: 1,
  name: 'Thermostat',
  about: 'Thermostat renewed, coolant part drained and made up again. Not for hybrid or electric cars.',
  phases: [
    ARRIVAL,
    ACCESS,
    {
      key: 'opening',
      title: 'Open and drain',
      stageBefore: 'standing',
      stageAfter: 'opened',
      engine: 'cold',
      minutes: 30,
      place: 'bay',
      attendance: 'hands-on',
      steps: [MEASURED_COLD, LEVEL_ON_ARRIVAL, TRAY, CAP_OFF, DRAINED, KEPT, HOUSING_OFF],
    },
    {
      key: 'comparing',
      title: 'Compare',
      stageBefore: 'opened',
      stageAfter: 'opened',
      engine: 'cold',
      minutes: 15,
      place: 'bay',
      attendance: 'hands-on',
      steps: [REMOVED_PART, VARIANT],
    },
    {
      key: 'fitting',
      title: 'Fit and close',
      stageBefore: 'opened',
      stageAfter: 'closed-up',
      engine: 'cold',
      minutes: 35,
      place: 'bay',
      attendance: 'hands-on',
      steps: [RECESS_CLEAN, FITTED, TORQUED, HOSES_ON],
    },
    FILLING,
    RUNNING,
    SETTLING,
    LEAVING,
    NEXT_MORNING,
  ],
  stageMarks: [
    { stage: 'standing', when: 'any', steps: ['keys-tagged', 'odometer', 'damage-noted'] },
    { stage: 'opened', when: 'any', steps: ['cap-off', 'drained', 'housing-off'] },
    { stage: 'closed-up', when: 'any', steps: ['torqued'] },
    { stage: 'filled', when: 'any', steps: ['first-fill'] },
    { stage: 'run-hot', when: 'any', steps: ['run-hot'] },
    { stage: 'settling', when: 'any', steps: ['left-to-cool'] },
    { stage: 'settled', when: 'all', steps: ['cold-level', 'strength'] },
    { stage: 'keys-out', when: 'any', steps: ['keys-out'] },
  ],
};
