import { type Step } from '../template/template.ts';

const STARTED = ['closed-and-torqued', 'clear-of-tools-and-fan'] as const;

export const TOOLS_COUNTED: Step = {
  key: 'tools-counted',
  title: 'Tools counted out, clear of the fan',
  help: 'As many back as went in. Rags, leads, sleeves and hair clear of belts and fan.',
  evidence: { kind: 'count', what: 'tools' },
  hold: 'clear-of-tools-and-fan',
  caution: 'Exhaust gas kills indoors: extraction on, or outside. The fan starts without warning.',
};

export const SHORT_RUN: Step = {
  key: 'short-run',
  title: 'Short run',
  help: 'Heater on full. A few minutes as the manual says, then stop. Watch the level and the temperature: climbing fast means air or no flow, stop at once.',
  evidence: { kind: 'timer', minutes: 3 },
  behind: STARTED,
  runsEngine: true,
  caution: 'Hands out of the engine bay while it runs.',
};

export const TOPPED_UP: Step = {
  key: 'topped-up',
  title: 'Stopped and topped up',
  help: 'Engine off. Bring the level to the mark; close the step with a tick if it took nothing.',
  evidence: { kind: 'jugs', fill: 'after-short-run' },
  behind: ['closed-and-torqued'],
  figures: ['recipe', 'tolerance'],
  caution: 'Never top up a running engine, never open it hot or under pressure: hose soft first, cloth over the cap.',
};

export const RUN_HOT: Step = {
  key: 'run-hot',
  title: 'Run to full temperature',
  help: 'Cap on, air conditioning off, heater on full, until the thermostat has opened.',
  evidence: { kind: 'tick' },
  behind: STARTED,
  runsEngine: true,
  caution: 'Everything is hot now. Climbs past normal, or the radiator side stays cold while it climbs: stop the engine.',
};

export const HEATER_HOSES: Step = {
  key: 'heater-hoses',
  title: 'Both heater hoses hot',
  help: 'Feel or measure both. An electric auxiliary heater blows warm air without flow: the hoses tell, the air does not.',
  evidence: {
    kind: 'choice',
    fact: 'heaterHoses',
    options: [
      { key: 'both-hot', words: 'Both hot', passes: true },
      { key: 'one-hot', words: 'Only one is hot' },
      { key: 'both-cold', words: 'Both cold' },
    ],
  },
  hold: 'proof',
  behind: ['clear-of-tools-and-fan'],
};

export const RADIATOR_SIDE: Step = {
  key: 'radiator-side',
  title: 'Radiator side from cold to hot',
  help: 'Radiator-side hose and tank: cold while it warms up, then evenly hot. That is the thermostat opening. A fan switched by the engine side proves nothing about it.',
  evidence: {
    kind: 'choice',
    fact: 'radiatorSide',
    options: [
      { key: 'cold-to-hot', words: 'From cold to hot', passes: true },
      { key: 'hot-all-along', words: 'Warm from the start' },
      { key: 'stayed-cold', words: 'Stayed cold' },
    ],
  },
  hold: 'proof',
  behind: ['clear-of-tools-and-fan'],
};

export const NO_LEAK: Step = {
  key: 'no-leak',
  title: 'No leak',
  help: 'Hot and under pressure: joints, hoses, drain, water pump, under the dash.',
  evidence: {
    kind: 'choice',
    fact: 'leak',
    options: [
      { key: 'none', words: 'No leak', passes: true },
      { key: 'damp', words: 'Damp somewhere' },
      { key: 'drips', words: 'Drips or runs' },
    ],
  },
  hold: 'proof',
  behind: ['clear-of-tools-and-fan'],
  caution: 'Look, don’t reach: hot, under pressure, and the fan may be running.',
};

export const FAN: Step = {
  key: 'fan',
  title: 'Fan',
  help: 'Air conditioning off. Its own check: not every car gets that warm standing.',
  evidence: {
    kind: 'choice',
    fact: 'fan',
    options: [
      { key: 'seen', words: 'Seen to start by itself' },
      { key: 'commanded', words: 'Started by the tester' },
      { key: 'not-fitted', words: 'None fitted, or driven by the engine' },
      {
        key: 'not-reached',
        words: 'Temperature not reached',
        asks: [
          { key: 'outsideC', words: 'Outside temperature', unit: '°C', range: { low: -50, high: 60, words: 'Degrees Celsius.' } },
          { key: 'minutes', words: 'Minutes waited', unit: 'min', range: { low: 0, high: 600, words: 'Minutes.' } },
        ],
      },
    ],
  },
  behind: ['clear-of-tools-and-fan'],
  caution: 'Keep clear of the fan, engine off or on.',
};
