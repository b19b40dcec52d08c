import { describe, expect, it } from '@jest/globals';
import { type EvidenceValue, findStep, readEvidence, THERMOSTAT_JOB } from '#libs/checklist';
import { evidenceWords } from './evidence-words.ts';

const words = (key: string, raw: unknown): string => {
  const step = findStep(THERMOSTAT_JOB, key);
  const read = step && readEvidence(step.evidence, raw);
  if (!step || read?.ok !== true) throw new Error(`${key} can't be read`);
  return evidenceWords(step, read.value satisfies EvidenceValue);
};

describe('evidenceWords', () => {
  it.each([
    ['odometer', { value: 123_400 }, '123400 km'],
    ['strength', { value: -22, instrument: 'refractometer' }, '\u221222 °C ± 2'],
    [
      'measured-cold',
      { tempC: 47.5, instrument: 'contact-probe', place: 'top-hose', pressure: 'none', hose: 'soft' },
      '47.5 ± 2.0 °C, Contact probe, Top hose',
    ],
    ['drained', { litres: 4.25, about: true }, 'about 4.25 L'],
    [
      'fan',
      { choice: 'not-reached', outsideC: 12, minutes: 14 },
      'Temperature not reached, outside temperature 12 °C, minutes waited 14 min',
    ],
    ['access-off', { items: [] }, 'none'],
    ['access-off', { items: ['Duct', 'Cover'] }, 'Duct, Cover'],
    ['access-on', { leftOff: [] }, 'all of it'],
    ['access-on', { leftOff: [{ item: 'Cover', why: 'broken' }] }, 'left off: Cover (broken)'],
    ['tools-counted', { counted: 11, of: 12 }, '11 of 12'],
    ['first-fill', { productMl: 1050, waterMl: 950 }, '1050 mL product and 950 mL water'],
    ['level-on-arrival', { belowMarkMl: 400 }, '400 mL below the cold mark'],
    ['level-on-arrival', { empty: true }, 'the tank was empty'],
    ['cold-level', { belowMarkMl: -50, waterMl: 20 }, '50 mL above the cold mark; took 20 mL water'],
    ['variant', { variant: 'HM-T88', basis: 'side-by-side' }, 'HM-T88'],
    [
      'torqued',
      { setAt: 9.5, unit: 'Nm', tightened: 2, of: 3, inSequence: false, document: 'Manual', page: '12' },
      '9.5 Nm, 2 of 3, not in sequence; Manual, page 12',
    ],
  ])('of %s', (key, raw, expected) => {
    expect(words(key, raw)).toBe(expected);
  });
});
