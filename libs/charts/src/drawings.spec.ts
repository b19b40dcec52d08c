import { describe, expect, it } from '@jest/globals';
import { CHART_CSS } from './chart-css.ts';
import { type Palette } from './drawing.ts';
import { SAMPLES } from './testing/samples.ts';
import { impossibleValues, overlappingTexts, textFacts, textsOutside } from './testing/svg-facts.ts';
import { xmlFault } from './testing/well-formed.ts';

const ids = (svg: string): string[] => [...svg.matchAll(/ id="([^"]*)"/g)].map((found) => found[1] ?? '');
const classes = (svg: string): string[] => [...svg.matchAll(/ class="([^"]*)"/g)].flatMap((found) => (found[1] ?? '').split(' '));

describe('the checks themselves', () => {
  it.each(['<a><b></a>', '<a x=1/>', '<a>&foo</a>', '<a x="1" x="2"/>', '<a><</a>', '<a/><b/>', '<a>', 'x<a/>'])('refuse %s', (broken) => {
    expect(xmlFault(broken)).not.toBeNull();
  });

  it('accept what is well-formed', () => {
    expect(xmlFault('<a x="1 &amp; 2"><b/>text &lt;</a>')).toBeNull();
  });

  it('see two texts on one another and one outside', () => {
    const text = (x: number): string => `<text x="${x}" y="20" font-size="16">words</text>`;
    const svg = (inner: string): string => `<svg viewBox="0 0 100 40">${inner}</svg>`;
    expect(overlappingTexts(svg(text(0) + text(10)))).toHaveLength(1);
    expect(overlappingTexts(svg(text(0) + text(50)))).toHaveLength(0);
    expect(textsOutside(svg(text(80)))).toHaveLength(1);
  });
});

const CASES = Object.entries(SAMPLES).flatMap(([name, draw]) =>
  [318, 640, 1010].flatMap((widthPx) => (['page', 'print'] as const).map((palette) => ({ name, widthPx, palette, draw }))),
);

describe.each(CASES)('$name, $palette, $widthPx px', ({ draw, widthPx, palette }) => {
  const drawing = draw({ palette: palette satisfies Palette, idPrefix: 'test-1', widthPx });
  const { svg, title, table } = drawing;

  it('is well-formed and holds nothing impossible', () => {
    expect(xmlFault(svg)).toBeNull();
    expect(impossibleValues(svg)).toEqual([]);
  });

  it('is a named picture of the width asked for', () => {
    expect(svg).toMatch(new RegExp(`^<svg [^>]*role="img" aria-labelledby="test-1-title test-1-desc" width="${widthPx}" `));
    expect(svg).toMatch(/<title id="test-1-title">[^<]+<\/title><desc id="test-1-desc">[^<]+<\/desc>/);
    expect(title).not.toBe('');
  });

  it('has ids of its own and uses no other', () => {
    const own = ids(svg);
    expect(new Set(own).size).toBe(own.length);
    expect(own.every((id) => id.startsWith('test-1-'))).toBe(true);
    const used = [...svg.matchAll(/url\(#([^)]*)\)/g)].map((found) => found[1] ?? '');
    expect(used.filter((id) => !own.includes(id))).toEqual([]);
  });

  it('sets its texts at 13 px or more, inside the picture, none on another', () => {
    expect(Math.min(13, ...textFacts(svg).map(({ sizePx }) => sizePx))).toBe(13);
    expect(textsOutside(svg)).toEqual([]);
    expect(overlappingTexts(svg)).toEqual([]);
  });

  it('has a table as wide as its head', () => {
    expect(table.caption).not.toBe('');
    expect(table.rows.filter((row) => row.length !== table.head.length)).toEqual([]);
  });

  it('takes its colours the way its palette says', () => {
    if (palette === 'print') {
      expect(svg).not.toContain('class=');
      expect(svg).not.toContain('var(');
    } else {
      const known = new Set([...CHART_CSS.matchAll(/\.([\w-]+) \{/g)].map((found) => found[1] ?? ''));
      expect([...new Set(classes(svg))].filter((name) => !known.has(name))).toEqual([]);
    }
  });
});
