import { describe, expect, it } from '@jest/globals';
import { type DrawingOptions } from './drawing.ts';
import { LOGS } from './testing/samples.ts';
import { countParts, overlappingTexts, partBoxes, textFacts } from './testing/svg-facts.ts';
import { splitAtGaps } from './warm-up/split-at-gaps.ts';
import { type WarmUpData } from './warm-up/warm-up-data.ts';
import { warmUpFrame } from './warm-up/warm-up-frame.ts';
import { warmUpChart } from './warm-up-chart.ts';

const OPTIONS: DrawingOptions = { palette: 'page', idPrefix: 'w', widthPx: 1010 };
const words = (svg: string): string[] => textFacts(svg).map(({ content }) => content);

describe('warmUpChart', () => {
  it('draws the band eleven degrees to each side of the stamp', () => {
    const frame = warmUpFrame(LOGS, 1010);
    const [band] = partBoxes(warmUpChart(LOGS, OPTIONS).svg, 'band');
    expect(band?.y).toBeCloseTo(frame.yOf(99), 1);
    expect((band?.y ?? 0) + (band?.height ?? 0)).toBeCloseTo(frame.yOf(77), 1);
  });

  it('names the curves, the bend with its interval, and the band', () => {
    expect(words(warmUpChart(LOGS, OPTIONS).svg)).toEqual(
      expect.arrayContaining([
        'After, 9 June',
        'Before, 8 June: 62 °C in town, 56 at speed',
        'thermostat opens, 88 ± 2 °C',
        '77 to 99 °C: within 11 °C of the 88 on the part',
      ]),
    );
  });

  it('says what bends where that is no thermostat that opens', () => {
    const knee = { minute: 14, tempC: 88, halfWidthC: 2, words: 'the climb ends' };
    const after = { label: 'After', samples: LOGS.after?.samples ?? [], knee };
    expect(words(warmUpChart({ before: null, after, nominalC: null }, OPTIONS).svg)).toContain('the climb ends, 88 ± 2 °C');
  });

  it('tells the curves apart without colour: one thick, one thin with rings', () => {
    const { svg } = warmUpChart(LOGS, OPTIONS);
    const part = (name: string): string => svg.slice(svg.indexOf(`data-part="${name}"`)).split('</g>')[0] ?? '';
    expect(part('after')).toContain('stroke-width="5"');
    expect(part('before')).toContain('stroke-width="2"');
    expect(part('before').split('<circle').length - 1).toBeGreaterThan(10);
    expect(part('after')).not.toContain('<circle');
  });

  it('thins a long log but keeps its one spike', () => {
    const samples = Array.from({ length: 36_000 }, (_, index) => ({ minute: index / 600, tempC: index === 20_000 ? 130 : 80 }));
    const { svg } = warmUpChart({ before: null, after: { label: 'Long', samples }, nominalC: null }, OPTIONS);
    const spikeY = warmUpFrame({ before: null, after: { label: 'Long', samples }, nominalC: null }, 1010).yOf(130);
    expect(svg.length).toBeLessThan(60_000);
    expect(svg).toContain(` ${Math.round(spikeY * 100) / 100}L`);
  });

  it('bridges a pause in the log by a broken line', () => {
    const samples = (LOGS.after?.samples ?? []).filter(({ minute }) => minute < 6 || minute > 8);
    expect(splitAtGaps(samples).map(({ length }) => length)).toEqual([60, 170]);
    const gappy: WarmUpData = { before: null, after: { label: 'After', samples }, nominalC: null };
    expect(warmUpChart(gappy, OPTIONS).svg).toContain('stroke-width="2" stroke-dasharray="7 5"');
  });

  it('takes readings in any order', () => {
    const shuffled = { before: null, after: { label: 'After', samples: [...(LOGS.after?.samples ?? [])].reverse() }, nominalC: 88 };
    const ordered = { ...shuffled, after: { label: 'After', samples: LOGS.after?.samples ?? [] } };
    expect(warmUpChart(shuffled, OPTIONS).svg).toBe(warmUpChart(ordered, OPTIONS).svg);
  });

  it('draws speeds only where there are some and they are wanted', () => {
    expect(countParts(warmUpChart(LOGS, OPTIONS).svg, 'speed')).toBe(1);
    expect(countParts(warmUpChart({ ...LOGS, hasSpeed: false }, OPTIONS).svg, 'speed')).toBe(0);
    const silent = { ...LOGS, after: { label: 'After', samples: [{ minute: 1, tempC: 20, speedKmh: null }] }, before: null };
    expect(countParts(warmUpChart(silent, OPTIONS).svg, 'speed')).toBe(0);
  });

  it('keeps to a height that is asked for, labels apart', () => {
    const { svg } = warmUpChart({ ...LOGS, hasSpeed: false, heightPx: 240 }, { ...OPTIONS, widthPx: 406, palette: 'print' });
    expect(svg).toContain('height="240"');
    expect(overlappingTexts(svg)).toEqual([]);
  });

  it('puts every whole minute into the table', () => {
    const { table } = warmUpChart(LOGS, OPTIONS);
    expect(table.head).toEqual([
      'minute',
      'Before, 8 June: 62 °C in town, 56 at speed, °C',
      'Before, 8 June: 62 °C in town, 56 at speed, km/h',
      'After, 9 June, °C',
      'After, 9 June, km/h',
    ]);
    expect(table.rows).toHaveLength(26);
    expect(table.rows[14]).toEqual(['14', '61', '40', '88', '40']);
  });
});
