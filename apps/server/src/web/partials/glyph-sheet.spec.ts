import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import Handlebars from 'handlebars';

const folders = [import.meta.dirname, `${import.meta.dirname}/../layouts`];
const templates = folders.flatMap((folder) =>
  readdirSync(folder)
    .filter((file) => file.endsWith('.hbs'))
    .map((file) => ({ file, text: readFileSync(`${folder}/${file}`, 'utf8') })),
);
const sheet = readFileSync(`${import.meta.dirname}/glyph-sheet.hbs`, 'utf8');
const glyphs = new Set([...sheet.matchAll(/<(?:symbol|g) id="([^"]+)"/g)].map(([, id]) => id));

const choices: Record<string, readonly string[]> = {
  'stage-{{name}}': [
    'spoken-of',
    'expected',
    'standing',
    'opened',
    'closed-up',
    'filled',
    'run-hot',
    'settling',
    'settled',
    'keys-out',
    'squared',
    'fell-through',
  ].map((name) => `stage-${name}`),
  'peg-{{verdict}}': ['peg-fits', 'peg-does-not-fit', 'peg-inconclusive', 'peg-not-read'],
  'hold-{{state}}': ['hold-shut', 'hold-passed', 'hold-passed-without'],
  'temp-{{kind}}': ['temp-cold', 'temp-warm', 'temp-hot'],
  'light-{{value}}': ['light-day', 'light-sun', 'light-bay'],
  'notice-{{#if kind}}{{kind}}{{else}}note{{/if}}': ['notice-note', 'notice-done', 'notice-stopped', 'notice-caution'],
  '{{#if hold}}hold-{{hold}}{{else}}step-{{state}}{{/if}}': ['step-done', 'step-now', 'step-ahead', 'step-differs'],
};

describe('glyph sheet', () => {
  it('draws every glyph that a partial or layout places', () => {
    const placed = templates.flatMap(({ text }) => [...text.matchAll(/href="#([^"]+?)" \/>/g)].map(([, id]) => id ?? ''));
    const wanted = placed.flatMap((id) => choices[id] ?? [id]);
    expect(wanted.filter((id) => !glyphs.has(id))).toEqual([]);
  });

  it('names each glyph once', () => {
    const ids = [...sheet.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(ids).toHaveLength(new Set(ids).size);
  });
});

describe('partials and layouts', () => {
  it('can be read by the engine', () => {
    const unread = templates.filter(({ text }) => {
      try {
        Handlebars.parse(text);
        return false;
      } catch {
        return true;
      }
    });
    expect(unread.map(({ file }) => file)).toEqual([]);
  });

  it('carry no style attribute or script of their own, which the page would refuse', () => {
    const refused = templates.filter(({ text }) => /\sstyle="|<script(?![^>]*\bsrc=)|\son[a-z]+="/.test(text));
    expect(refused.map(({ file }) => file)).toEqual([]);
  });
});
