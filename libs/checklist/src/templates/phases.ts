import { type Phase } from '../template/template.ts';
import { COVERED, DAMAGE_NOTED, KEYS_TAGGED, ODOMETER, PHOTOS_BEFORE, ACCESS_OFF, THERMOSTAT_KIND } from './arrival-steps.ts';
import { BLED, FIRST_FILL, HELD_COLD } from './filling-steps.ts';
import {
  ACCESS_ON,
  AFTER_LOG,
  BAY_CLEAN,
  COLD_LEVEL,
  KEYS_OUT,
  LEFT_TO_COOL,
  STRENGTH,
  TOPPED_UP_COOLED,
  WASTE_BOOKED,
} from './leaving-steps.ts';
import { FAN, HEATER_HOSES, NO_LEAK, RADIATOR_SIDE, RUN_HOT, SHORT_RUN, TOOLS_COUNTED, TOPPED_UP } from './running-steps.ts';

/** Phases that several templates share. Minutes are common practice without a source: a workshop sets its own. */
export const ARRIVAL: Phase = {
  key: 'arrival',
  title: 'Take in',
  stageBefore: 'expected',
  stageAfter: 'standing',
  engine: 'any',
  minutes: 10,
  place: 'apron',
  attendance: 'hands-on',
  steps: [KEYS_TAGGED, ODOMETER, DAMAGE_NOTED, THERMOSTAT_KIND],
};

export const ACCESS: Phase = {
  key: 'access',
  title: 'Get there',
  stageBefore: 'standing',
  stageAfter: 'standing',
  engine: 'any',
  minutes: 25,
  place: 'bay',
  attendance: 'hands-on',
  steps: [COVERED, PHOTOS_BEFORE, ACCESS_OFF],
};

export const FILLING: Phase = {
  key: 'filling',
  title: 'Fill and bleed',
  stageBefore: 'closed-up',
  stageAfter: 'filled',
  engine: 'cold',
  minutes: 30,
  place: 'bay',
  attendance: 'hands-on',
  steps: [FIRST_FILL, BLED, HELD_COLD],
};

export const RUNNING: Phase = {
  key: 'running',
  title: 'Run hot and prove',
  stageBefore: 'filled',
  stageAfter: 'run-hot',
  engine: 'running',
  minutes: 35,
  place: 'apron',
  attendance: 'within-earshot',
  steps: [TOOLS_COUNTED, SHORT_RUN, TOPPED_UP, RUN_HOT, HEATER_HOSES, RADIATOR_SIDE, NO_LEAK, FAN],
};

export const SETTLING: Phase = {
  key: 'settling',
  title: 'Settle',
  stageBefore: 'run-hot',
  stageAfter: 'settling',
  engine: 'any',
  minutes: 20,
  place: 'anywhere',
  attendance: 'hands-on',
  steps: [LEFT_TO_COOL, TOPPED_UP_COOLED, STRENGTH, WASTE_BOOKED, ACCESS_ON, BAY_CLEAN],
};

export const LEAVING: Phase = {
  key: 'leaving',
  title: 'Keys',
  stageBefore: 'settling',
  stageAfter: 'keys-out',
  engine: 'any',
  minutes: 5,
  place: 'anywhere',
  attendance: 'hands-on',
  steps: [KEYS_OUT],
};

export const NEXT_MORNING: Phase = {
  key: 'next-morning',
  title: 'Next morning',
  stageBefore: 'settling',
  stageAfter: 'settled',
  engine: 'cold',
  minutes: 15,
  place: 'anywhere',
  attendance: 'hands-on',
  steps: [COLD_LEVEL, AFTER_LOG],
};
