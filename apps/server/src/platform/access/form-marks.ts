import { randomUUID } from 'node:crypto';
import { cleanText } from '../clean-text.ts';
import type { FormMarks } from './request-state.ts';

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;

export const newFormKey = (): string => randomUUID();

export const isRequestKey = (key: unknown): key is string => typeof key === 'string' && UUID.test(key);

/** A path of our own as a browser writes it, never another site and nothing that an address line can't carry. */
export function localPath(path: unknown): string | undefined {
  return typeof path === 'string' && /^\/(?![/\\])[!-[\]-~]*$/.test(path) && path.length <= 500 ? path : undefined;
}

/** Takes the hidden fields out of a form's body, so that validation sees only what the person typed. */
export function takeFormMarks(body: Record<string, unknown>): FormMarks {
  const { _csrf: csrf, _key: key, _page: page, _form: name, _kept: kept } = body;
  for (const mark of ['_csrf', '_key', '_page', '_form', '_kept']) delete body[mark];
  return {
    csrf,
    key: isRequestKey(key) ? key : undefined,
    page: localPath(page),
    name: typeof name === 'string' ? cleanText(name.slice(0, 60)) : undefined,
    isKept: kept === '1',
  };
}
