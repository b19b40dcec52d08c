import { describe, expect, it } from '@jest/globals';
import { readAction } from '../index.ts';
import { tap } from '../testing/tap.ts';
import { canonicalText } from './canonical-text.ts';

describe('an action as it arrives', () => {
  const good = tap('tick', 'tray');
  it('is read as it is', () => {
    expect(readAction(good)).toEqual({ ok: true, value: good });
  });
  it.each([
    [null, "The action's id is missing."],
    [[], "The action's id is missing."],
    [{ ...good, id: ' a' }, "The action's id begins or ends with a space."],
    [{ ...good, kind: 'toString' }, 'What was done: choose one of'],
    [{ ...good, by: '' }, 'Who did it is missing.'],
    [{ ...good, byProof: 'pin' }, 'How it is known who did it: choose one of session, picked-offline.'],
    [{ ...good, readAt: '2026-06-09 09:24' }, 'The time it was done is no time with an offset'],
    [{ ...good, readAt: '2026-13-09T09:24:00Z' }, 'The time it was done is no time with an offset'],
    [{ ...good, readAt: '2026-06-09T09:24:00' }, 'The time it was done is no time with an offset'],
  ])('%j', (raw, why) => {
    const read = readAction(raw);
    expect(read.ok ? '' : read.why).toContain(why);
  });
  it('a clock that is wrong by years is no reason to lose it', () => {
    expect(readAction({ ...good, readAt: '1970-01-01T00:00:09Z' }).ok).toBe(true);
  });
});

describe('the same text for the same JSON', () => {
  it.each([
    [{ b: 1, a: [true, null] }, '{"a":[true,null],"b":1}'],
    [{ a: undefined, b: 2 }, '{"b":2}'],
    [{ n: Number.NaN, f: Symbol }, '{"f":"<function>","n":null}'],
    [10n, '"<bigint>"'],
  ])('%#', (value, text) => {
    expect(canonicalText(value)).toBe(text);
  });
  it('ends on values that contain themselves', () => {
    const loop: Record<string, unknown> = {};
    loop['self'] = loop;
    expect(canonicalText(loop)).toContain('<deep>');
  });
});
