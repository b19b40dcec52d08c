/** An element to be written: text or children, never both. */
export interface XmlNode {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string | null;
  readonly children: readonly XmlNode[];
}

/** An element with text; nothing when there is no text, since empty elements are refused by receivers. */
export function leaf(name: string, text: string | null | undefined, attributes: Readonly<Record<string, string>> = {}): XmlNode[] {
  if (text === null || text === undefined || text.trim() === '') return [];
  return [{ name, attributes, text, children: [] }];
}

/** An element with children in the order given; nothing when there are none. */
export function branch(name: string, ...children: readonly (readonly XmlNode[])[]): XmlNode[] {
  const present = children.flat();
  return present.length === 0 ? [] : [{ name, attributes: {}, text: null, children: present }];
}
