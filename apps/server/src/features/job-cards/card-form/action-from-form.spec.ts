import { describe, expect, it } from '@jest/globals';
import { findStep, type Step, THERMOSTAT_JOB } from '#libs/checklist';
import { actionFromForm } from './action-from-form.ts';

const step = (key: string): Step => {
  const found = findStep(THERMOSTAT_JOB, key);
  if (!found) throw new Error(`The template has no step ${key}`);
  return found;
};

const value = (key: string, fields: Record<string, string>): unknown => {
  const read = actionFromForm(step(key), { act: 'do', ...fields });
  return read.ok ? read.value : read.errors;
};

const fieldsAtFault = (key: string, fields: Record<string, unknown>): string[] => {
  const read = actionFromForm(step(key), { act: 'do', ...fields });
  return read.ok ? [] : read.errors.map(({ field }) => field);
};

const cold = { tempC: '47,5', instrument: 'contact-probe', place: 'top-hose', signs: 'soft' };
const torque = { setAt: '9', unit: 'Nm', tightened: '2', of: '2', document: 'Manual', page: '12', inSequence: '1' };

describe('the work of a step', () => {
  it.each([
    ['litres with a comma', 'drained', { litres: '4,6' }, { litres: 4.6 }],
    ['litres judged by eye', 'drained', { litres: '4.5', about: '1' }, { litres: 4.5, about: true }],
    ['a reading without an instrument', 'odometer', { value: '123400' }, { value: 123_400 }],
    [
      'a freezing point without its sign',
      'strength',
      { value: '22', instrument: 'refractometer' },
      { value: -22, instrument: 'refractometer' },
    ],
    [
      'a freezing point with its sign',
      'strength',
      { value: '\u221222', instrument: 'hydrometer' },
      { value: -22, instrument: 'hydrometer' },
    ],
    ['a level below the mark', 'level-on-arrival', { side: 'below', belowMarkMl: '400' }, { belowMarkMl: 400 }],
    ['a level above the mark', 'level-on-arrival', { side: 'above', belowMarkMl: '100' }, { belowMarkMl: -100 }],
    ['a level at the mark', 'level-on-arrival', { side: 'at', belowMarkMl: '' }, { belowMarkMl: 0 }],
    ['an empty tank', 'level-on-arrival', { side: 'empty' }, { empty: true }],
    ['a count', 'tools-counted', { counted: '12', of: '12' }, { counted: 12, of: 12 }],
    ['a list', 'access-off', { items: ' Air duct \n\nCover' }, { items: ['Air duct', 'Cover'] }],
    ['an empty list that says so', 'access-off', { items: '', none: '1' }, { items: [] }],
    ['what stays off', 'access-on', { 'left-1': 'Cover', 'why-1': 'broken' }, { items: [], leftOff: [{ item: 'Cover', why: 'broken' }] }],
    ['a tick', 'tray', {}, null],
  ] as const)('reads %s', (_what, key, fields, expected) => {
    const amounts = key === 'level-on-arrival' ? { productMl: 0, waterMl: 0, keptMl: 0 } : {};
    expect(value(key, fields)).toEqual(expected === null ? null : { ...expected, ...amounts });
  });

  it('reads a cold reading with what the hose says', () => {
    expect(value('measured-cold', cold)).toEqual({
      tempC: 47.5,
      instrument: 'contact-probe',
      place: 'top-hose',
      pressure: 'none',
      hose: 'soft',
    });
  });

  it('takes a hard hose for pressure', () => {
    expect(value('measured-cold', { ...cold, signs: 'hard' })).toMatchObject({ pressure: 'some', hose: 'hard' });
  });

  it('records the evidence of a hold point and never forces it', () => {
    expect(actionFromForm(step('measured-cold'), { act: 'do', ...cold })).toMatchObject({ kind: 'record', step: 'measured-cold' });
    expect(actionFromForm(step('tray'), { act: 'do' })).toMatchObject({ kind: 'tick' });
  });

  it('reads the figures that one answer asks for', () => {
    expect(value('fan', { choice: 'not-reached', 'not-reached.outsideC': '\u22123', 'not-reached.minutes': '14' })).toEqual({
      choice: 'not-reached',
      outsideC: -3,
      minutes: 14,
    });
    expect(value('fan', { choice: 'seen', 'not-reached.outsideC': '' })).toEqual({ choice: 'seen' });
  });

  it('reads a torque as printed', () => {
    expect(value('torqued', torque)).toEqual({
      setAt: 9,
      unit: 'Nm',
      tightened: 2,
      of: 2,
      inSequence: true,
      document: 'Manual',
      page: '12',
      thread: null,
      then: null,
    });
  });
});

describe('a mistake', () => {
  it.each([
    ['no figure', 'drained', { litres: '' }, ['litres']],
    ['letters for a figure', 'drained', { litres: 'four' }, ['litres']],
    ['a figure that can’t be', 'drained', { litres: '4600' }, ['litres']],
    ['a list of values for a figure', 'drained', { litres: ['1', '2'] }, ['litres']],
    ['no instrument', 'measured-cold', { ...cold, instrument: '' }, ['instrument']],
    ['an instrument of nobody’s', 'measured-cold', { ...cold, instrument: 'thumb' }, ['instrument']],
    ['no word of pressure', 'measured-cold', { ...cold, signs: undefined }, ['signs']],
    ['nothing at all', 'measured-cold', {}, ['signs', 'tempC', 'instrument', 'place']],
    ['no answer', 'no-leak', {}, ['choice']],
    ['an answer without its figures', 'fan', { choice: 'not-reached' }, ['not-reached.outsideC', 'not-reached.minutes']],
    [
      'a figure of an answer that can’t be',
      'fan',
      { choice: 'not-reached', 'not-reached.outsideC': '90', 'not-reached.minutes': '5' },
      ['not-reached.outsideC'],
    ],
    ['an empty list that does not say so', 'access-off', { items: '  ' }, ['items']],
    ['what stays off without a reason', 'access-on', { 'left-0': 'Cover' }, ['why-0']],
    ['no manual', 'torqued', { ...torque, document: '', page: ' ' }, ['document', 'page']],
    ['more than all', 'torqued', { ...torque, tightened: '3' }, ['tightened']],
    ['half a bolt', 'torqued', { ...torque, of: '2.5' }, ['of']],
    ['no torque', 'torqued', { ...torque, setAt: '0' }, ['setAt']],
    ['a level without its side', 'level-on-arrival', { belowMarkMl: '5' }, ['side']],
  ])('of %s is shown beside its field', (_what, key, fields, expected) => {
    expect(fieldsAtFault(key, fields)).toEqual(expected);
  });

  it('of an unknown act asks to reload', () => {
    const read = actionFromForm(step('tray'), { act: 'burn' });
    expect(read).toMatchObject({ ok: false, errors: [{ field: 'act' }] });
  });
});

describe('beside the work', () => {
  it('passes a hold point without evidence for one of five reasons', () => {
    expect(actionFromForm(step('variant'), { act: 'without', reason: 'tool-not-here', withoutWords: 'camera' })).toEqual({
      ok: true,
      kind: 'pass-without',
      step: 'variant',
      value: { reason: 'tool-not-here', words: 'camera' },
    });
    expect(actionFromForm(step('variant'), { act: 'without', reason: 'no-idea' })).toMatchObject({
      ok: false,
      errors: [{ field: 'reason' }],
    });
  });

  it('opens a warm engine only with a second person, words, and certainly no pressure', () => {
    const asked = { act: 'without', reason: 'not-measured', second: 'somebody', withoutWords: 'cold since Friday' };
    expect(actionFromForm(step('measured-cold'), { ...asked, noPressure: '1' })).toMatchObject({
      value: { pressure: 'none', second: 'somebody' },
    });
    expect(actionFromForm(step('measured-cold'), asked)).toMatchObject({ ok: false, errors: [{ field: 'noPressure' }] });
    expect(actionFromForm(step('measured-cold'), { act: 'without' })).toMatchObject({
      errors: [{ field: 'noPressure' }, { field: 'reason' }, { field: 'second' }, { field: 'withoutWords' }],
    });
  });

  it('pours a jug as one action and closes the step as another', () => {
    const jug = { act: 'pour', productMl: '1050', waterMl: '950', keptMl: '0' };
    expect(actionFromForm(step('first-fill'), jug)).toMatchObject({
      kind: 'pour-jug',
      value: { productMl: 1050, waterMl: 950, keptMl: 0 },
    });
    expect(actionFromForm(step('first-fill'), { act: 'pour' })).toMatchObject({ ok: false, errors: [{ field: 'productMl' }] });
    expect(actionFromForm(step('first-fill'), { act: 'close' })).toMatchObject({ kind: 'tick', value: null });
  });

  it.each([
    ['take-back', { of: 'x', takenBackWhy: 'wrong car' }, { of: 'x', reason: 'wrong car' }],
    ['take-back', {}, { reason: null }],
    ['note', { note: 'Clip brittle' }, { words: 'Clip brittle' }],
    ['finding', { found: 'Hose swollen', severity: 'soon' }, { words: 'Hose swollen', severity: 'soon' }],
    ['wait', { waitFor: 'part', until: '2026-06-10' }, { for: 'part', until: '2026-06-10', who: null, words: null }],
    ['go-back', { to: 'opened', backWhy: 'drips' }, { to: 'opened', reason: 'drips' }],
    ['settle', { of: 'x', settled: '' }, { of: 'x', words: null }],
  ])('reads %s', (act, fields, expected) => {
    expect(actionFromForm('card', { act, ...fields })).toMatchObject({ ok: true, step: 'card', value: expected });
  });

  it.each([
    ['note', 'note'],
    ['finding', 'severity'],
    ['wait', 'waitFor'],
    ['go-back', 'to'],
    ['do', 'act'],
  ])('refuses an empty %s of the whole card', (act, field) => {
    expect(actionFromForm('card', { act })).toMatchObject({
      ok: false,
      errors: expect.arrayContaining([expect.objectContaining({ field })]),
    });
  });
});
