import { type Instrument, type Place } from '../template/evidence.ts';

/** Thermometers most workshops have. The ± are common practice without a source: a workshop puts in its own instruments' figures. */
export const THERMOMETERS: readonly Instrument[] = [
  { key: 'contact-probe', words: 'Contact probe', method: 'contact', expandedU: 2 },
  { key: 'infrared', words: 'Infrared', method: 'infrared', expandedU: 4 },
  { key: 'engine-sensor', words: "The engine's own sensor", method: 'engine-sensor', expandedU: 3 },
];

export const COLD_PLACES: readonly Place[] = [
  { key: 'top-hose', words: 'Top hose', bareMetal: false },
  { key: 'tank', words: 'Expansion tank', bareMetal: false },
  { key: 'taped-metal', words: 'Housing, on matt tape', bareMetal: false },
  { key: 'bare-metal', words: 'Housing, bare metal', bareMetal: true },
];

/** For the freezing point of the mixed coolant, K. Common practice, no source. */
export const STRENGTH_METERS: readonly Instrument[] = [
  { key: 'refractometer', words: 'Refractometer', method: 'other', expandedU: 2 },
  { key: 'hydrometer', words: 'Hydrometer', method: 'other', expandedU: 4 },
];
