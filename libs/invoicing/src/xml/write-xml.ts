import { create } from 'xmlbuilder2';
import { type XmlNode } from './xml-node.ts';

type Builder = ReturnType<typeof create>;

/**
 * Writes a tree as XML 1.0 text in UTF-8, escaped and indented.
 *
 * @param root names with their prefix, such as 'cbc:ID'
 * @param namespaces prefix to namespace; '' is the namespace of names without prefix
 */
export function writeXml(root: XmlNode, namespaces: Readonly<Record<string, string>>): string {
  const document = create({ version: '1.0', encoding: 'UTF-8' });
  const element = open(document, root, namespaces);
  for (const [prefix, uri] of Object.entries(namespaces))
    element.att('http://www.w3.org/2000/xmlns/', prefix === '' ? 'xmlns' : `xmlns:${prefix}`, uri);
  fill(element, root, namespaces);
  return document.end({ prettyPrint: true });
}

function open(parent: Builder, node: XmlNode, namespaces: Readonly<Record<string, string>>): Builder {
  const [prefix = ''] = node.name.includes(':') ? node.name.split(':') : [];
  return parent.ele(namespaces[prefix] ?? '', node.name);
}

function fill(element: Builder, node: XmlNode, namespaces: Readonly<Record<string, string>>): void {
  for (const [name, value] of Object.entries(node.attributes)) element.att(name, clean(value));
  if (node.text !== null) element.txt(clean(node.text));
  for (const child of node.children) fill(open(element, child, namespaces), child, namespaces);
}

/** Pasted text can hold characters that XML 1.0 cannot carry at all, not even escaped. */
function clean(text: string): string {
  return [...text].filter((character) => isXmlCharacter(character.codePointAt(0) ?? 0)).join('');
}

function isXmlCharacter(code: number): boolean {
  if (code < 0x20) return code === 0x09 || code === 0x0a || code === 0x0d;
  return code <= 0xd7ff || (code >= 0xe000 && code <= 0xfffd) || code >= 0x10000;
}
