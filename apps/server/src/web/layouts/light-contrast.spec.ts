import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';

/*
 * Contrast by the formula of WCAG 2.2 (W3C Recommendation, "relative luminance" and "contrast ratio"; computed here):
 * 4.5 for text (1.4.3), 3 for borders and marks (1.4.11). The stricter figures for sun and dark bay are our own.
 */
const css = readFileSync(`${import.meta.dirname}/../../../assets/styles/tokens.css`, 'utf8');

function coloursOf(light: 'day' | 'sun' | 'bay'): Map<string, string> {
  const block = new RegExp(`\\[data-light='${light}'\\] \\{([^}]*)\\}`).exec(css)?.[1] ?? '';
  return new Map([...block.matchAll(/--([a-z0-9-]+): (#[0-9a-f]{6})/g)].map(([, name = '', colour = '']) => [name, colour]));
}

function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(one: string, other: string): number {
  const [dark = 0, bright = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (bright + 0.05) / (dark + 0.05);
}

const day = coloursOf('day');
const colour = (light: 'day' | 'sun' | 'bay', name: string): string => {
  const own = coloursOf(light).get(name) ?? day.get(name);
  if (!own) throw new Error(`tokens.css has no --${name}`);
  return own;
};

const texts = ['ink', 'ink2', 'green', 'cold', 'hot', 'fits', 'no', 'unsure'];
const lights = [
  { light: 'day', least: 4.5 },
  { light: 'sun', least: 8.6 },
  { light: 'bay', least: 7 },
] as const;

describe('contrast formula', () => {
  it('gives 21 for black on white and 4.48 for #777777 on white', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
  });
});

describe.each(lights)('$light', ({ light, least }) => {
  const ratios = (names: readonly string[], grounds: readonly string[]) =>
    names.flatMap((name) => grounds.map((ground) => ({ name, ground, ratio: contrast(colour(light, name), colour(light, ground)) })));

  it(`gives every text at least ${least}:1 on floor and sheet`, () => {
    expect(ratios(texts, ['floor', 'sheet']).filter(({ ratio }) => ratio < least)).toEqual([]);
  });

  it('gives words in unlit rooms at least 4.5:1', () => {
    expect(ratios(['ink', 'ink2'], ['dim']).filter(({ ratio }) => ratio < 4.5)).toEqual([]);
  });

  it('gives words on lamp, green and crimson at least 4.5:1', () => {
    const pairs = ['lamp', 'green', 'no'].map((ground) => contrast(colour(light, `on-${ground}`), colour(light, ground)));
    expect(pairs.filter((ratio) => ratio < 4.5)).toEqual([]);
  });

  it('gives borders at least 3:1', () => {
    expect(ratios(['edge'], ['floor', 'sheet', 'dim']).filter(({ ratio }) => ratio < 3)).toEqual([]);
  });
});
