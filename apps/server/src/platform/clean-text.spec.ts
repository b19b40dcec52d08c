import { describe, expect, it } from '@jest/globals';
import { cleanText } from './clean-text.ts';

describe('cleanText', () => {
  it.each([
    ['a null sign', 'Fenn\0Bakery', 'FennBakery'],
    ['control characters', 'a\u0007b\u007fc', 'abc'],
    ['line breaks and tabs, which stay', 'a\n\tb', 'a\n\tb'],
    ['half a pair in front', '\ud800abc', '\ufffdabc'],
    ['half a pair behind', 'abc\udc00', 'abc\ufffd'],
    ['a pair the wrong way round', '\udc00\ud800', '\ufffd\ufffd'],
    ['whole pairs, which stay', '\ud83d\ude97 Garage', '\ud83d\ude97 Garage'],
  ])('deals with %s', (_what, text, clean) => {
    expect(cleanText(text)).toBe(clean);
  });
});
