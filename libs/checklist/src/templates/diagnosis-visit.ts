import { type Step, type Template } from '../template/template.ts';
import { LEAVING, ARRIVAL } from './phases.ts';
import { LEVEL_ON_ARRIVAL, MEASURED_COLD } from './opening-steps.ts';
import { TOOLS_COUNTED } from './running-steps.ts';

const CODES: Step = {
  key: 'codes',
  title: 'Fault codes read',
  help: 'Name them; an empty list says none. A code names a failed test, not a failed part.',
  evidence: { kind: 'list', fact: 'codes' },
};

const SENSORS_AGREE: Step = {
  key: 'sensors-agree',
  title: 'Sensors agree at rest',
  help: 'Stone cold, ignition on: coolant, intake and outside within a few kelvin of each other. If not, the sensor comes first.',
  evidence: {
    kind: 'choice',
    fact: 'sensorsAgree',
    options: [
      { key: 'agree', words: 'They agree' },
      { key: 'coolant-apart', words: 'The coolant sensor stands apart' },
      { key: 'other-apart', words: 'Another one stands apart' },
    ],
  },
};

const COLD_LOG: Step = {
  key: 'before-log',
  title: 'Warm-up log from cold',
  help: 'Stone cold after a night here, on the road where it can be done. Dashboard gauges are damped: they are no log.',
  evidence: { kind: 'tick' },
  runsEngine: true,
  caution: 'Exhaust gas kills indoors. Climbs past normal: stop the engine, do not drive on.',
};

const PRESSURE_TEST: Step = {
  key: 'pressure-test',
  title: 'Cap and system under pressure',
  help: 'Cap against its printed rating, then the system, cold.',
  evidence: {
    kind: 'choice',
    fact: 'pressureTest',
    options: [
      { key: 'both-held', words: 'Both held' },
      { key: 'cap-failed', words: 'The cap did not' },
      { key: 'system-fell', words: 'The system lost pressure' },
    ],
  },
  behind: ['safe-to-open'],
  caution: 'The tester goes on where the cap was: cold and without pressure only. Let the pressure off before taking it off.',
};

const GAS_TEST: Step = {
  key: 'gas-test',
  title: 'Combustion gas in the coolant',
  help: 'If it overheats, or hoses are hard when cold: a thermostat fitted to a leaking head gasket comes back.',
  evidence: {
    kind: 'choice',
    fact: 'gasTest',
    options: [
      { key: 'none', words: 'None found' },
      { key: 'found', words: 'Found' },
    ],
  },
  behind: ['safe-to-open', 'clear-of-tools-and-fan'],
  optional: true,
  caution: 'The engine runs with the cap off: stand clear, by the tester’s instructions, stop before it is warm.',
  runsEngine: true,
};

const RULED_OUT: Step = {
  key: 'ruled-out',
  title: 'Ruled out, and how',
  help: 'Sensor, low level, air lock, a fan that never stops: they look alike. Name each with how it was ruled out.',
  evidence: { kind: 'list', fact: 'ruledOut' },
};

const VERDICT: Step = {
  key: 'verdict',
  title: 'What was found',
  help: 'From the log and the checks. “Not enough” is an answer.',
  evidence: {
    kind: 'choice',
    fact: 'diagnosis',
    options: [
      { key: 'opens-early', words: 'Thermostat opens early or stays open' },
      { key: 'stuck-closed', words: 'Thermostat stays closed' },
      { key: 'sensor', words: 'Sensor' },
      { key: 'level-or-air', words: 'Low level or air' },
      { key: 'fan', words: 'Fan' },
      { key: 'head-gasket', words: 'Suspected head gasket' },
      { key: 'healthy', words: 'Nothing wrong found' },
      { key: 'not-enough', words: 'Not enough to tell' },
    ],
  },
};

const CLOSED_AGAIN: Step = {
  key: 'closed-again',
  title: 'Cap on, level right, all closed',
  help: 'As it came, or better. What was found goes to the Counter for the estimate.',
  evidence: { kind: 'tick' },
};

/** A visit to find out, without a repair: the log before, the checks, and home again. */
export const DIAGNOSIS_VISIT: Template = {
  key: 'diagnosis',
  version: 1,
  name: 'Diagnosis',
  about: 'Find out why it runs cold or hot. The car stands here the night before; nothing is drained.',
  phases: [
    ARRIVAL,
    {
      key: 'at-rest',
      title: 'Stone cold',
      stageBefore: 'standing',
      stageAfter: 'standing',
      engine: 'cold',
      minutes: 20,
      place: 'apron',
      attendance: 'hands-on',
      steps: [CODES, LEVEL_ON_ARRIVAL, SENSORS_AGREE],
    },
    {
      key: 'log',
      title: 'Log from cold',
      stageBefore: 'standing',
      stageAfter: 'standing',
      engine: 'running',
      minutes: 40,
      place: 'apron',
      attendance: 'hands-on',
      steps: [COLD_LOG],
    },
    {
      key: 'checks',
      title: 'Checks',
      stageBefore: 'standing',
      stageAfter: 'standing',
      engine: 'cold',
      minutes: 40,
      place: 'bay',
      attendance: 'hands-on',
      steps: [MEASURED_COLD, PRESSURE_TEST, { ...TOOLS_COUNTED, optional: true }, GAS_TEST, RULED_OUT, VERDICT, CLOSED_AGAIN],
    },
    { ...LEAVING, stageBefore: 'standing' },
  ],
  stageMarks: [
    { stage: 'standing', when: 'any', steps: ['keys-tagged', 'odometer', 'damage-noted'] },
    { stage: 'keys-out', when: 'any', steps: ['keys-out'] },
  ],
};
