const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

// What XML 1.0 does not allow as a character, lone surrogates included.
const NOT_XML = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;

/**
 * Makes any text safe inside SVG, as content or attribute. Characters that XML does not know are dropped.
 *
 * @example escapeXml('O <ring> & "seal"'); // 'O &lt;ring&gt; &amp; &quot;seal&quot;'
 */
export function escapeXml(text: string): string {
  return text.replace(NOT_XML, '').replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign);
}
