const TAG = /^<(\/?)([A-Za-z][\w:-]*)((?:\s+[A-Za-z_][\w:.-]*="[^"<]*")*)\s*(\/?)>/;
const ATTRIBUTE = /\s([A-Za-z_][\w:.-]*)="([^"<]*)"/g;
const TEXT = /^[^<]+/;
const BARE_AMPERSAND = /&(?!(?:amp|lt|gt|quot|#\d+|#x[\dA-Fa-f]+);)/;

/** What is wrong with a piece of XML, or null when it is well-formed: tags, attributes, references, one root. Stricter than a browser. */
export function xmlFault(xml: string): string | null {
  const open: string[] = [];
  let rest = xml;
  let roots = 0;
  while (rest !== '') {
    const text = TEXT.exec(rest)?.[0];
    if (text !== undefined) {
      if (open.length === 0) return `text outside the root: ${text.slice(0, 30)}`;
      if (BARE_AMPERSAND.test(text)) return `bare ampersand: ${text.slice(0, 30)}`;
      rest = rest.slice(text.length);
      continue;
    }
    const tag = TAG.exec(rest);
    if (tag === null) return `no tag: ${rest.slice(0, 60)}`;
    const [whole, isClosing, name = '', attributes = '', isEmpty] = tag;
    const names = [...attributes.matchAll(ATTRIBUTE)].map((found) => found[1]);
    if (new Set(names).size !== names.length) return `attribute twice in ${whole}`;
    if (BARE_AMPERSAND.test(attributes)) return `bare ampersand in ${whole}`;
    if (isClosing === '/') {
      if (open.pop() !== name) return `</${name}> closes nothing`;
    } else {
      if (open.length === 0) roots += 1;
      if (isEmpty !== '/') open.push(name);
    }
    rest = rest.slice(whole.length);
  }
  if (open.length > 0) return `<${open.join('>, <')}> left open`;
  return roots === 1 ? null : `${roots} roots`;
}
