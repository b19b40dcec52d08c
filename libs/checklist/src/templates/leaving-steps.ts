import { type Step } from '../template/template.ts';
import { STRENGTH_METERS } from './instruments.ts';

export const LEFT_TO_COOL: Step = {
  key: 'left-to-cool',
  title: 'Engine off, left to cool',
  help: 'The level is only right when it is cold again.',
  evidence: { kind: 'tick' },
};

export const TOPPED_UP_COOLED: Step = {
  key: 'topped-up-cooled',
  title: 'Topped up after the hot run',
  help: 'Once it may be opened. Close the step with a tick if it took nothing.',
  evidence: { kind: 'jugs', fill: 'after-run-hot' },
  behind: ['closed-and-torqued'],
  figures: ['recipe', 'tolerance'],
  caution: 'Never open it hot or under pressure: hose soft, cloth over the cap, slowly.',
};

export const STRENGTH: Step = {
  key: 'strength',
  title: 'Mixed strength read',
  help: 'From the tank after the run, at about 20 °C. It stands beside the computed one: apart, the capacity or the residual was wrong.',
  evidence: {
    kind: 'reading',
    fact: 'strengthFreezingC',
    unit: '°C',
    range: { low: -75, high: 0, words: 'The freezing point the scale shows, at or below zero.' },
    instruments: STRENGTH_METERS,
  },
  figures: ['recipe'],
};

export const WASTE_BOOKED: Step = {
  key: 'waste-booked',
  title: 'Waste into the drum',
  help: 'Litres into the coolant drum, never mixed with oil, fuel or brake fluid. Local rules say how it is classed.',
  evidence: { kind: 'litres', fact: 'wasteBookedL', range: { low: 0, high: 60, words: 'Litres, not millilitres.' } },
  debt: { kind: 'waste', dueDays: 1 },
};

export const ACCESS_ON: Step = {
  key: 'access-on',
  title: 'All back on',
  help: 'The list of what came off is shown. Name only what is left off, and why.',
  evidence: { kind: 'list', fact: 'leftOff', returns: 'access-off' },
  optional: true,
};

export const BAY_CLEAN: Step = {
  key: 'bay-clean',
  title: 'Bay clean and dry',
  help: 'Spills soaked up and bagged as waste, floor dry, tray emptied and wiped.',
  evidence: { kind: 'tick' },
  optional: true,
};

export const KEYS_OUT: Step = {
  key: 'keys-out',
  title: 'Keys out',
  help: 'The car leaves. What has not been checked yet stays owed, with a date.',
  evidence: { kind: 'tick' },
  behindOnceOpened: ['proof'],
};

export const COLD_LEVEL: Step = {
  key: 'cold-level',
  title: 'Level when cold',
  help: 'Next morning, before the engine is started: against the cold mark, and what it took. A little air is usual; more than the tolerance: look for a leak.',
  evidence: {
    kind: 'level',
    fact: 'coldLevel',
    range: { low: -3000, high: 20_000, words: 'Millilitres below the cold mark; above it with a minus.' },
    fill: 'next-morning',
  },
  figures: ['tolerance'],
  debt: { kind: 'level-check', dueDays: 3 },
};

export const AFTER_LOG: Step = {
  key: 'after-log',
  title: 'Warm-up log after the repair',
  help: 'From a cold start, on the road: before and after on one chart is the proof.',
  evidence: { kind: 'tick' },
  debt: { kind: 'after-log', dueDays: 14 },
};
