import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { xmlFault } from '../testing/well-formed.ts';
import { escapeXml } from './escape-xml.ts';
import { fitText } from './fit-text.ts';
import { formatClock } from './format-clock.ts';
import { formatFigure } from './format-figure.ts';
import { formatVolume } from './format-volume.ts';
import { textWidth } from './text-width.ts';
import { wrapText } from './wrap-text.ts';

describe('escapeXml', () => {
  it('escapes the five signs and drops what XML does not know', () => {
    expect(escapeXml('O <ring> & "seal" \'x\'\u0000\uFFFE\uD800')).toBe('O &lt;ring&gt; &amp; &quot;seal&quot; &#39;x&#39;');
    expect(escapeXml('Łódź 漢字 😀')).toBe('Łódź 漢字 😀');
  });

  it('makes any text well-formed as content and as attribute', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(xmlFault(`<a b="${escapeXml(text)}">${escapeXml(text)}</a>`)).toBeNull();
      }),
    );
  });
});

describe('figures', () => {
  it.each([
    [-27, { decimals: 1 }, '−27'],
    [54, { decimals: 1, fixed: true }, '54.0'],
    [-0.04, { decimals: 1 }, '0'],
    [-0.04, { decimals: 1, fixed: true }, '0.0'],
    [47.55, {}, '47.5'],
    [2.5e12, {}, '2.5e12'],
  ])('%p with %p is %p', (value, options, written) => {
    expect(formatFigure(value, options)).toBe(written);
  });

  it('are volumes in millilitres below a litre', () => {
    expect([0.04, 0.999, 0.9996, 4.8, 2.455].map(formatVolume)).toEqual(['40 mL', '999 mL', '1 L', '4.8 L', '2.46 L']);
  });

  it('are clock times that start again at midnight', () => {
    expect([0, 580, 1439.6, 1500, -30].map(formatClock)).toEqual(['00:00', '09:40', '00:00', '01:00', '23:30']);
  });
});

describe('textWidth', () => {
  // Measured with getComputedTextLength at 100 px in Chromium with the bundled typefaces.
  it.each([
    ['thermostat opens, 88 ± 2 °C', 'text', 700, 1208],
    ['77 to 99 °C: within 11 °C of the 88 on the part', 'text', 600, 1975],
    ['boils once the cap is off', 'text', 400, 1043],
    ['Ångström, Łódź', 'text', 400, 692.1],
    ['€1,231.20', 'sign', 800, 476],
    ['Kestle & Daw', 'sign', 800, 634],
    ['450 mL', 'sign', 800, 370],
    ['−27 °C', 'sign', 600, 293],
  ] as const)('of %p in %s %i is within 3 %% of the browser’s', (text, face, weight, measured) => {
    const width = textWidth(text, { sizePx: 100, face, weight });
    expect(Math.abs(width - measured) / measured).toBeLessThan(0.03);
  });
});

describe('fitting', () => {
  it('shortens to the width and says that it did', () => {
    fc.assert(
      fc.property(fc.string(), fc.integer({ min: 20, max: 200 }), (text, maxWidthPx) => {
        const fitted = fitText(text, { sizePx: 14, maxWidthPx });
        expect(textWidth(fitted, { sizePx: 14 })).toBeLessThanOrEqual(maxWidthPx);
        if (fitted !== text) expect(fitted.endsWith('…')).toBe(true);
      }),
    );
  });

  it('wraps at words and keeps a figure with its unit', () => {
    expect(wrapText('boils once the cap is off', { sizePx: 15, maxWidthPx: 100 })).toEqual(['boils once the', 'cap is off']);
    expect(wrapText('boils, at 240 m', { sizePx: 15, maxWidthPx: 82 })).toEqual(['boils, at', '240\u00A0m']);
  });

  it('folds what is left into the last line', () => {
    expect(wrapText('one two three four five six', { sizePx: 14, maxWidthPx: 60, maxLines: 2 })).toEqual(['one two', 'three fo…']);
  });

  it('loses nothing while there are lines enough', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-z]{1,6}$/), { maxLength: 12 }), (words) => {
        expect(wrapText(words.join(' '), { sizePx: 14, maxWidthPx: 80, maxLines: 20 }).join(' ')).toBe(words.join(' '));
      }),
    );
  });
});
