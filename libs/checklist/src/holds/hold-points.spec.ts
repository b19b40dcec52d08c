import { describe, expect, it } from '@jest/globals';
import { type Action, applyAction, type CardState, foldCard, type HoldKey, THERMOSTAT_JOB } from '../index.ts';
import { tap } from '../testing/tap.ts';
import { COLD, TORQUE, untilDrained, untilFilled, untilRunHot } from '../testing/whole-job.ts';

const WARM = { ...COLD, tempC: 55 };
const SECOND = { reason: 'too-warm', second: 'ines', pressure: 'none', words: 'head gasket job, manual allows 60 with the cap vented' };

function after(
  actions: readonly Action[],
  hold: HoldKey,
  onePersonSite = false,
): { state?: string | undefined; why?: string | undefined; codes: readonly string[] } {
  const card = foldCard(THERMOSTAT_JOB, actions, { onePersonSite });
  return { state: card.holds[hold]?.state, why: card.holds[hold]?.why, codes: card.differences.map((d) => d.code) };
}

describe('safe to open', () => {
  it('keeps warm readings as facts, shut, and opens with the first cold one', () => {
    const warm = tap('record', 'measured-cold', WARM);
    const card = foldCard(THERMOSTAT_JOB, [warm]);
    expect(card.holds['safe-to-open']).toMatchObject({ state: 'shut', why: 'Too hot to open: 55.0 °C, the limit is 50. Let it cool.' });
    expect(card.facts.numbers['coldReadingC']?.value).toBe(55);
    expect(card.waits).toMatchObject([{ kind: 'cold', since: warm.readAt }]);
    const cold = applyAction(card, tap('record', 'measured-cold', COLD));
    expect(cold.holds['safe-to-open']?.state).toBe('passed');
    expect(cold.waits).toEqual([]);
    expect(cold.steps['measured-cold']?.history).toHaveLength(2);
  });

  it('says that a pass which does not pass was kept', () => {
    expect(after([tap('pass', 'measured-cold', WARM)], 'safe-to-open')).toMatchObject({ state: 'shut', codes: ['hold-not-passed'] });
  });

  it('shuts again when a later reading is warm, and an older cold one arriving late does not open it', () => {
    const old = tap('record', 'measured-cold', COLD, { deviceId: 'tablet-2' });
    const first = tap('record', 'measured-cold', COLD);
    const warm = tap('record', 'measured-cold', WARM);
    expect(after([first, warm], 'safe-to-open').state).toBe('shut');
    const late = after([first, warm, old], 'safe-to-open');
    expect(late).toMatchObject({ state: 'shut', codes: [] });
    expect(late.why).toContain('A later reading said otherwise');
    expect(after([first, warm, tap('record', 'measured-cold', COLD)], 'safe-to-open').state).toBe('passed');
  });

  it('an instrument with a smaller stated doubt than its own is not believed', () => {
    const reading = { ...COLD, tempC: 47, instrument: 'infrared', expandedUncertaintyC: 0.1 };
    expect(after([tap('record', 'measured-cold', reading)], 'safe-to-open').why).toContain('47.0 + 4.0 = 51.0');
  });

  it('warm: a second person and why', () => {
    expect(after([tap('pass-without', 'measured-cold', SECOND)], 'safe-to-open')).toMatchObject({ state: 'passed-without', codes: [] });
    expect(after([tap('record', 'measured-cold', WARM), tap('pass-without', 'measured-cold', SECOND)], 'safe-to-open').state).toBe(
      'passed-without',
    );
  });

  it.each([
    ['nobody else', { second: undefined }],
    ['oneself', { second: 'jory' }],
    ['no why', { words: ' ' }],
    ['no known reason', { reason: 'in a hurry' }],
    ['pressure', { pressure: 'some' }],
    ['pressure unknown', { pressure: 'unsure' }],
    ['pressure not said', { pressure: undefined }],
    ['a hard hose', { hose: 'hard' }],
  ])('warm and %s: stays shut', (_name, over) => {
    expect(after([tap('pass-without', 'measured-cold', { ...SECOND, ...over })], 'safe-to-open')).toMatchObject({
      state: 'shut',
      codes: ['bad-value'],
    });
  });

  it('on a one-person site there is no exception', () => {
    const alone = foldCard(THERMOSTAT_JOB, [tap('pass-without', 'measured-cold', SECOND)], { onePersonSite: true });
    expect(alone.holds['safe-to-open']?.state).toBe('shut');
    expect(alone.differences[0]?.why).toContain('Wait until it is cold');
  });

  it('draining behind it is kept as a difference, with what opens it', () => {
    const drained = tap('record', 'drained', { litres: 5 });
    const card = foldCard(THERMOSTAT_JOB, [tap('tick', 'keys-tagged'), drained]);
    expect(card.steps['drained']?.state).toBe('open');
    expect(card.differences).toMatchObject([{ actionId: drained.id, action: drained, code: 'behind-hold' }]);
    expect(card.differences[0]?.why).toContain('Measure the engine cold');
    expect(card.stage).toBe('standing');
  });
});

describe('the other holds: evidence, or one of five reasons', () => {
  it.each([
    ['variant', 'variant-settled', 'fitted'],
    ['torqued', 'closed-and-torqued', 'first-fill'],
    ['tools-counted', 'clear-of-tools-and-fan', 'short-run'],
  ] as const)('%s', (step, hold, protectedStep) => {
    const upTo = (all: readonly Action[]): Action[] => all.filter((_a, i) => i < all.findIndex((a) => a.step === step));
    const before = upTo(untilRunHot());
    const behind = step === 'tools-counted' ? tap('start-timer', protectedStep) : tap('tick', protectedStep);
    expect(after([...before, behind], hold)).toMatchObject({ state: 'shut', codes: ['behind-hold'] });
    expect(after([...before, tap('pass-without', step, { reason: 'because' })], hold)).toMatchObject({
      state: 'shut',
      codes: ['bad-value'],
    });
    expect(after([...before, tap('not-applicable', step, { reason: 'no' })], hold)).toMatchObject({ state: 'shut', codes: ['wrong-kind'] });
    const without = tap('pass-without', step, { reason: 'tool-not-here', words: 'wrench at calibration' });
    expect(after([...before, without, behind], hold)).toMatchObject({
      state: 'passed-without',
      why: 'tool-not-here: wrench at calibration',
      codes: [],
    });
  });

  it.each([
    ['not all tightened', { tightened: 2 }, '2 of 3 are tightened.'],
    ['out of sequence', { inSequence: false }, "Not tightened in the manual's sequence: slacken and tighten in sequence."],
  ])('torque %s stays shut', (_name, over, why) => {
    const before = [...untilDrained(), tap('pass', 'variant', { variant: 'A', basis: 'stamp' })];
    expect(after([...before, tap('record', 'torqued', { ...TORQUE, ...over })], 'closed-and-torqued')).toMatchObject({
      state: 'shut',
      why,
      codes: [],
    });
  });

  it('a missing tool keeps the engine from starting', () => {
    const held = after([...untilFilled(), tap('record', 'tools-counted', { counted: 13, of: 14 })], 'clear-of-tools-and-fan');
    expect(held).toMatchObject({ state: 'shut', why: '13 of 14 are back: find the rest before the engine starts.' });
  });

  it('a reason gives way to the evidence when it comes', () => {
    const before = [...untilDrained(), tap('pass', 'variant', { variant: 'A', basis: 'stamp' })];
    const rest = [tap('pass-without', 'torqued', { reason: 'tool-not-here' }), tap('pour-jug', 'first-fill', { waterMl: 2000 })];
    const torqued = after([...before, ...rest, tap('record', 'torqued', TORQUE)], 'closed-and-torqued');
    expect(torqued).toMatchObject({ state: 'passed', codes: [] });
  });

  it('proof takes all three, and a later leak shuts it', () => {
    const card = foldCard(THERMOSTAT_JOB, untilRunHot());
    expect(card.holds.proof?.state).toBe('passed');
    const damp = applyAction(card, tap('record', 'no-leak', { choice: 'damp' }));
    expect(damp.holds.proof).toMatchObject({ state: 'shut', why: 'No leak: Damp somewhere.' });
    const two = foldCard(
      THERMOSTAT_JOB,
      untilRunHot().filter((a) => a.step !== 'radiator-side'),
    );
    expect(two.holds.proof?.state).toBe('shut');
  });

  it('an ordinary step can not be passed without', () => {
    const card: CardState = foldCard(THERMOSTAT_JOB, [tap('pass-without', 'tray', { reason: 'tool-not-here' })]);
    expect(card.differences.map((d) => d.code)).toEqual(['wrong-kind']);
  });
});
