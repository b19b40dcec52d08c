// Whether something made from sources is still up to date: a hash of the sources is kept beside it.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const DERIVED = /\.spec\.ts$|\.spec-data\.ts$|\.md$|\/generated\/|\/openapi-metadata\.ts$/;

function filesUnder(entry) {
  if (!existsSync(entry)) return [];
  if (statSync(entry).isFile()) return [entry];
  return readdirSync(entry, { recursive: true, withFileTypes: true })
    .filter((found) => found.isFile())
    .map((found) => path.join(found.parentPath ?? found.path, found.name))
    .filter((file) => !DERIVED.test(file))
    .sort();
}

function hashOf(inputs) {
  const hash = createHash('sha256');
  for (const file of inputs.flatMap(filesUnder)) hash.update(`${file}\0`).update(readFileSync(file)).update('\0');
  return hash.digest('hex');
}

/** @param {{ inputs: string[], output: string, stamp: string }} product output: a file that must exist; stamp: where the hash is kept */
export function isFresh({ inputs, output, stamp }) {
  return existsSync(output) && existsSync(stamp) && readFileSync(stamp, 'utf8') === hashOf(inputs);
}

/** Makes it; the hash is taken before, so that a change made meanwhile is seen next time. */
export async function refresh({ inputs, stamp }, make) {
  rmSync(stamp, { force: true });
  const hash = hashOf(inputs);
  await make();
  mkdirSync(path.dirname(stamp), { recursive: true });
  writeFileSync(stamp, hash);
}
