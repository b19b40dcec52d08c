import { describe, expect, it } from '@jest/globals';
import { parseUnitsAnswer } from './parse-units-answer.ts';

describe('answers about units', () => {
  it.each([
    ['C', { coolant: '°C', intake: '°C', ambient: '°C' }],
    ['fahrenheit', { coolant: '°F', intake: '°F', ambient: '°F' }],
    ['metric', { coolant: '°C', intake: '°C', ambient: '°C', speed: 'km/h' }],
    ['imperial', { coolant: '°F', intake: '°F', ambient: '°F', speed: 'mph' }],
    ['coolant=F, speed=mph', { coolant: '°F', speed: 'mph' }],
    ['{"coolant":"celsius","time":"ms"}', { coolant: '°C', time: 'ms' }],
    ['temperature: °C', { coolant: '°C', intake: '°C', ambient: '°C' }],
  ])('%s', (answer, units) => {
    expect(parseUnitsAnswer(answer)).toEqual({ ok: true, units });
  });

  it('takes an object', () => {
    expect(parseUnitsAnswer({ coolant: '°F' })).toEqual({ ok: true, units: { coolant: '°F' } });
  });

  it.each(['', 'warm', 'coolant=mph', 'time=C', 'oil=C', '{broken', { coolant: 5 }])('%p: says what to write', (answer) => {
    expect(parseUnitsAnswer(answer)).toMatchObject({ ok: false, problem: expect.stringMatching(/use|say/) });
  });
});
