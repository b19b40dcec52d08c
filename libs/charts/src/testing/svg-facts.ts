import { type Box } from '../pen/pen.ts';
import { sharedArea, textBox } from '../placing/boxes.ts';

const unescape = (text: string): string =>
  text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')
    .replaceAll('\u00A0', ' ');

const attributesOf = (markup: string): Record<string, string> => {
  const pairs = [...markup.matchAll(/([\w-]+)="([^"]*)"/g)].map((found): [string, string] => [found[1] ?? '', found[2] ?? '']);
  return Object.fromEntries(pairs);
};

const numberOf = (attributes: Record<string, string>, name: string): number => Number(attributes[name] ?? 0);

/** One line of text as it stands in the picture. */
export interface TextFact {
  readonly content: string;
  readonly sizePx: number;
  readonly box: Box;
}

/** All texts with the room they take. */
export function textFacts(svg: string): TextFact[] {
  return [...svg.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)].map(([, markup = '', content = '']) => {
    const attributes = attributesOf(markup);
    const sizePx = numberOf(attributes, 'font-size');
    const anchor = attributes['text-anchor'];
    const spec = {
      x: numberOf(attributes, 'x'),
      y: numberOf(attributes, 'y'),
      sizePx,
      face: attributes['font-family'] === undefined ? ('text' as const) : ('sign' as const),
      weight: attributes['font-weight'] === '600' ? (600 as const) : (800 as const),
      anchor: anchor === 'middle' ? ('middle' as const) : anchor === 'end' ? ('end' as const) : ('start' as const),
    };
    return { content: unescape(content), sizePx, box: textBox(unescape(content), spec) };
  });
}

/** Letters may touch by this much, in square px, before it counts as overlap: the boxes are generous. */
const TOUCH = 1;

/** Pairs of texts that lie on one another. */
export function overlappingTexts(svg: string): string[] {
  const texts = textFacts(svg);
  return texts.flatMap((text, index) =>
    texts
      .slice(index + 1)
      .filter((other) => sharedArea(text.box, other.box) > TOUCH)
      .map((other) => `${text.content} | ${other.content}`),
  );
}

/** Texts that reach out of the picture. */
export function textsOutside(svg: string): string[] {
  const [width = 0, height = 0] = (/viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg)?.slice(1) ?? []).map(Number);
  return textFacts(svg)
    .filter(({ box }) => box.x < -1 || box.y < -1 || box.x + box.width > width + 1 || box.y + box.height > height + 1)
    .map(
      ({ content, box }) =>
        `${content} at ${Math.round(box.x)} to ${Math.round(box.x + box.width)}, ${Math.round(box.y)} of ${width} × ${height}`,
    );
}

/** The first rectangle of every part of that name. */
export function partBoxes(svg: string, name: string): Box[] {
  return [...svg.matchAll(new RegExp(`<g data-part="${name}"><rect ([^>]*)/>`, 'g'))].map(([, markup = '']) => {
    const attributes = attributesOf(markup);
    return {
      x: numberOf(attributes, 'x'),
      y: numberOf(attributes, 'y'),
      width: numberOf(attributes, 'width'),
      height: numberOf(attributes, 'height'),
    };
  });
}

/** The first path of every part of that name. */
export function partPaths(svg: string, name: string): string[] {
  return [...svg.matchAll(new RegExp(`<g data-part="${name}"><path [^>]*?d="([^"]*)"`, 'g'))].map((found) => found[1] ?? '');
}

/** How many parts of that name there are. */
export function countParts(svg: string, name: string): number {
  return svg.split(`data-part="${name}"`).length - 1;
}

/** What no drawing may contain, whatever its data. */
export function impossibleValues(svg: string): string[] {
  return ['NaN', 'Infinity', 'undefined', 'null', ' style=', 'opacity', 'rgba', '<style', '<script'].filter((word) => svg.includes(word));
}
