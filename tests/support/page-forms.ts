/** A form as it stands on a page, with what a browser would send of it. */
export interface PageForm {
  page: string;
  action: string;
  name: string;
  method: string;
  values: Record<string, string>;
  /** Everything but the hidden marks. */
  fields: readonly string[];
  /** Those of them that a person types into. */
  typed: readonly string[];
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#x27': "'", '#x3D': '=', '#x60': '`' };

export const unescapeHtml = (text: string): string =>
  text.replaceAll(/&(amp|lt|gt|quot|#x27|#x3D|#x60);/g, (_, name: string) => ENTITIES[name] ?? '');

function attribute(tag: string, name: string): string | undefined {
  const value = new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1];
  return value === undefined ? undefined : unescapeHtml(value);
}

const MARKS = new Set(['_csrf', '_key', '_page', '_form', '_kept']);

const NOT_TYPED = new Set(['hidden', 'checkbox', 'radio', 'submit', 'button', 'file']);

function valueOf(tag: string, rest: string): string {
  if (tag.startsWith('<select')) {
    const options = [...(rest.split('</select>')[0] ?? '').matchAll(/<option[^>]*>/g)].map(([option]) => option);
    return attribute(options.find((option) => option.includes(' selected')) ?? options.at(-1) ?? '', 'value') ?? '';
  }
  if (tag.startsWith('<textarea')) return unescapeHtml(rest.split('</textarea>')[0] ?? '');
  return attribute(tag, 'value') ?? (attribute(tag, 'type') === 'checkbox' ? 'on' : '');
}

export function formsOf(html: string, page: string): PageForm[] {
  return [...html.matchAll(/<form\b[^>]*>/g)].map((match) => {
    const [tag] = match;
    const inside = html.slice(match.index + tag.length).split('</form>')[0] ?? '';
    const values: Record<string, string> = {};
    const fields = new Set<string>();
    const typed = new Set<string>();
    for (const control of inside.matchAll(/<(?:input|select|textarea|button)\b[^>]*>/g)) {
      const [text] = control;
      const name = attribute(text, 'name');
      if (name === undefined) continue;
      const isChoice = /type="(radio|checkbox)"/.test(text);
      if (!isChoice || text.includes(' checked') || values[name] === undefined)
        values[name] = valueOf(text, inside.slice(control.index + text.length));
      if (!MARKS.has(name)) fields.add(name);
      if (text.startsWith('<textarea') || (text.startsWith('<input') && !NOT_TYPED.has(attribute(text, 'type') ?? 'text'))) typed.add(name);
    }
    return {
      page,
      action: attribute(tag, 'action') ?? page,
      name: values['_form'] ?? '',
      method: attribute(tag, 'method') ?? 'get',
      values,
      fields: [...fields],
      typed: [...typed],
    };
  });
}

/** Addresses of our own that a page leads to, without the place on the page. */
export function linksOf(html: string): string[] {
  return [...html.matchAll(/<a\b[^>]*\shref="([^"]*)"/g)]
    .map(([, href]) => unescapeHtml(href ?? '').split('#')[0] ?? '')
    .filter((href) => href.startsWith('/'));
}
