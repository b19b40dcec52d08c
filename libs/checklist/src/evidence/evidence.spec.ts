import { describe, expect, it } from '@jest/globals';
import { findStep, readEvidence, THERMOSTAT_JOB } from '../index.ts';
import { COLD, TORQUE } from '../testing/whole-job.ts';

function read(step: string, value: unknown): string {
  const found = findStep(THERMOSTAT_JOB, step);
  if (!found) throw new Error(`no step ${step}`);
  const answer = readEvidence(found.evidence, value);
  return answer.ok ? `ok ${JSON.stringify(answer.value)}` : answer.why;
}

describe('evidence as it comes from a tablet', () => {
  it.each([
    ['tray', null, 'ok {"kind":"tick"}'],
    ['drained', { litres: 5.2, about: true }, 'ok {"kind":"litres","litres":5.2,"about":true}'],
    ['drained', { litres: 5200 }, "Litres: 5200 can't be right, it lies outside 0 to 60. Litres, not millilitres."],
    ['drained', { litres: Number.NaN }, 'Litres needs a figure.'],
    ['drained', { litres: '5.2' }, 'Litres needs a figure.'],
    ['drained', [5.2], 'Litres needs a figure.'],
    ['strength', { value: -31 }, 'Say which instrument it was read with.'],
    ['strength', { value: 31, instrument: 'refractometer' }, 'outside -75 to 0'],
    ['odometer', { value: 12 }, '"instrument":null,"expandedU":null'],
    ['measured-cold', { ...COLD, pressure: undefined }, 'Pressure: choose one of none, some, unsure.'],
    ['measured-cold', { ...COLD, instrument: 'finger' }, 'Say which instrument it was measured with.'],
    ['measured-cold', { ...COLD, place: undefined }, 'Say where it was measured.'],
    ['measured-cold', { ...COLD, tempC: 475 }, 'outside -40 to 150'],
    ['fan', { choice: 'not-reached', outsideC: 8 }, 'Minutes waited needs a figure.'],
    ['fan', { choice: 'seen' }, 'ok {"kind":"choice","choice":"seen","asked":{}}'],
    ['fan', { choice: '__proto__' }, 'Choose one: Seen to start by itself'],
    ['level-on-arrival', { empty: true }, '"belowMarkMl":null'],
    ['level-on-arrival', {}, 'Level below the cold mark needs a figure.'],
    ['first-fill', { productMl: 0 }, 'Enter how much was poured'],
    ['first-fill', { productMl: -1 }, 'outside 0 to 100000'],
    ['tools-counted', { counted: 13.5, of: 14 }, 'How many tools came back needs a whole number from 0 up.'],
    ['access-on', { leftOff: [{ item: 'Duct' }] }, "Why 'Duct' is left off is missing."],
    ['access-off', { items: 'Duct' }, 'The list could not be read: enter it again.'],
    ['access-off', { items: ['Duct', ''] }, 'A name on the list is missing.'],
    ['access-off', { items: ['x'.repeat(4001)] }, 'longer than 4000 letters'],
    ['access-off', {}, 'ok {"kind":"list","items":[],"leftOff":[]}'],
    ['variant', { variant: 'A' }, 'What the choice rests on: choose one of'],
    ['torqued', { ...TORQUE, page: ' ' }, "The manual's page is missing."],
    ['torqued', { ...TORQUE, unit: 'kg·m' }, 'Unit as printed: choose one of Nm, lbf·ft, lbf·in.'],
    ['torqued', { ...TORQUE, tightened: 4 }, "4 of 3 can't be: correct one of the two."],
    ['torqued', { ...TORQUE, setAt: 0 }, 'outside 0.1 to 1000'],
  ])('%s %j', (step, value, expected) => {
    expect(read(step, value)).toContain(expected);
  });
});
