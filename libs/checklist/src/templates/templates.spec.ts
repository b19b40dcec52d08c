import { describe, expect, it } from '@jest/globals';
import { HOLD_KEYS, stepsOf, TEMPLATES, THERMOSTAT_JOB } from '../index.ts';

describe.each(TEMPLATES.map((template) => [template.key, template] as const))('template %s', (_key, template) => {
  const steps = stepsOf(template);
  const keys = steps.map((step) => step.key);

  it('names each step once and never like a phase', () => {
    const all = [...keys, ...template.phases.map((phase) => phase.key), 'card'];
    expect(new Set(all).size).toBe(all.length);
  });

  it('refers only to what it has', () => {
    const holds = steps.flatMap((step) => step.hold ?? []);
    const missing = template.stageMarks.flatMap((mark) => mark.steps).filter((key) => !keys.includes(key));
    expect(missing).toEqual([]);
    for (const step of steps) {
      if (step.evidence.kind === 'list' && step.evidence.returns !== undefined) expect(keys).toContain(step.evidence.returns);
      for (const hold of step.behind ?? []) expect([step.key, holds.includes(hold)]).toEqual([step.key, true]);
    }
  });

  it('never gives a torque or a maker’s figure: it asks for the manual’s', () => {
    const words = JSON.stringify(steps.map(({ title, help, caution }) => [title, help, caution]));
    expect(words).not.toMatch(/\d\s*(Nm|N·m|lbf|lb-ft|bar|kPa|psi)\b/);
  });

  it('uses no sign that the sign lettering lacks', () => {
    expect(JSON.stringify(template)).not.toMatch(/[≤≥→]/);
  });

  it('can be kept as JSON', () => {
    expect(JSON.parse(JSON.stringify(template))).toEqual(template);
  });
});

describe('the thermostat job', () => {
  it('has all five hold points, in their order', () => {
    const holds = stepsOf(THERMOSTAT_JOB).flatMap((step) => step.hold ?? []);
    expect([...new Set(holds)]).toEqual([...HOLD_KEYS]);
  });

  it('cautions where the hand can be hurt', () => {
    const cautioned = stepsOf(THERMOSTAT_JOB).flatMap((step) => (step.caution === undefined ? [] : [step.key]));
    const dangerous = [
      'measured-cold',
      'cap-off',
      'drained',
      'tools-counted',
      'short-run',
      'topped-up',
      'run-hot',
      'fan',
      'topped-up-cooled',
    ];
    expect(cautioned).toEqual(expect.arrayContaining(dangerous));
  });
});
