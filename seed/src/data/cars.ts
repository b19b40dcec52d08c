/** Invented makes, models and engines: what fits what is invented too. */
interface Engine {
  code: string;
  capacityL: number;
  /** kPa above the atmosphere, as printed on the cap. */
  capKPa: number;
  nominalC: number;
}

export interface Model {
  make: string;
  model: string;
  engine: Engine;
  from: number;
  to: number;
}

const TK14: Engine = { code: 'TK14', capacityL: 6.2, capKPa: 110, nominalC: 88 };
const TK16: Engine = { code: 'TK16', capacityL: 6.8, capKPa: 110, nominalC: 88 };
const BD20: Engine = { code: 'BD20', capacityL: 8.4, capKPa: 140, nominalC: 83 };
const OS12: Engine = { code: 'OS12', capacityL: 5.1, capKPa: 110, nominalC: 92 };
const OS16: Engine = { code: 'OS16', capacityL: 5.9, capKPa: 110, nominalC: 87 };

export const MODELS: readonly Model[] = [
  { make: 'Tamber', model: 'Orla 1.4', engine: TK14, from: 2012, to: 2019 },
  { make: 'Tamber', model: 'Quay 1.6', engine: TK16, from: 2010, to: 2018 },
  { make: 'Brask', model: 'Tollo 2.0 D', engine: BD20, from: 2011, to: 2021 },
  { make: 'Ostrel', model: 'Wren 1.2', engine: OS12, from: 2013, to: 2022 },
  { make: 'Ostrel', model: 'Finch 1.6', engine: OS16, from: 2009, to: 2017 },
];

export const COMPLAINTS = [
  'Gauge never comes up, even on the long road',
  'Heater lukewarm in the morning, a bit better in town',
  'Takes forever to get warm and drinks more than before',
  'Fault light on since last week, otherwise fine',
  'Temperature climbs on the hill, then drops again',
  'Coolant light came on twice, topped up with tap water',
  'Smells sweet after driving',
] as const;
