import { escapeXml } from '../text/escape-xml.ts';
import { type Attributes } from './paint.ts';

/** No drawing is wider or higher; a coordinate beyond is far outside and may as well end here. */
const FURTHEST_PX = 100_000;

/**
 * Writes a coordinate: hundredths of a px are enough, and short numbers keep pages small.
 *
 * @example coordinate(10.004); // '10'
 */
export function coordinate(px: number): string {
  const kept = Math.max(-FURTHEST_PX, Math.min(FURTHEST_PX, px));
  return String(Math.round(kept * 100) / 100 + 0);
}

/**
 * Writes one SVG element; attribute values are escaped, children are markup that is already safe.
 *
 * @example element('circle', { r: 2 }); // '<circle r="2"/>'
 */
export function element(name: string, attributes: Attributes, children = ''): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? coordinate(value) : escapeXml(String(value))}"`)
    .join('');
  return children === '' ? `<${name}${written}/>` : `<${name}${written}>${children}</${name}>`;
}
