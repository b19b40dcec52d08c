import { LINE_WIDTHS, TONES } from './pen/tones.ts';

const toneRules = Object.entries(TONES).map(
  ([name, { variable, day }]) =>
    `.cf-${name} {\n  fill: var(${variable}, ${day.toLowerCase()});\n}\n.cs-${name} {\n  stroke: var(${variable}, ${day.toLowerCase()});\n}`,
);
const widthRules = Object.entries(LINE_WIDTHS).map(
  ([name, { variable, day }]) => `.cw-${name} {\n  stroke-width: var(${variable}, ${day}px);\n}`,
);

/**
 * The rules that let drawings of the `page` palette follow the page's light. `chart.css` holds the same text as a file;
 * a test keeps the two equal.
 */
export const CHART_CSS = `.chart {
  display: block;
  max-width: 100%;
  height: auto;
  font-family: var(--text, Asap, system-ui, sans-serif);
  font-variant-numeric: tabular-nums lining-nums;
}
.ct-sign {
  font-family: var(--sign, 'National Park', Asap, sans-serif);
}
${[...toneRules, ...widthRules].join('\n')}
`;
