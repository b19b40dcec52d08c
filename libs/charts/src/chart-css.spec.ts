import { describe, expect, it } from '@jest/globals';
import { readFileSync } from 'node:fs';
import { CHART_CSS } from './chart-css.ts';

describe('chart.css', () => {
  it('is the exported text', () => {
    expect(readFileSync(new URL('../chart.css', import.meta.url), 'utf8')).toBe(CHART_CSS);
  });

  it('gives every tone a fill and a stroke that follow the page', () => {
    expect(CHART_CSS).toContain('.cf-lamp {\n  fill: var(--lamp, #ffd02b);\n}');
    expect(CHART_CSS).toContain('.cs-ink {\n  stroke: var(--ink, #0f1f1a);\n}');
    expect(CHART_CSS).toContain('.cw-stroke {\n  stroke-width: var(--stroke, 2px);\n}');
  });
});
