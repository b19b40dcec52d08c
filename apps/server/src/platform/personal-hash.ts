import { createHash } from 'node:crypto';
import { canonicalJson } from './canonical-json.ts';

/** What the chain holds of personal values: proves those that are kept, and stays when they are erased. */
export function personalHash(salt: string, values: unknown): string {
  return createHash('sha256')
    .update(salt + canonicalJson(values))
    .digest('hex');
}
