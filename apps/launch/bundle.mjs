// TypeScript for Node without a build: one entry bundled (20 ms), then imported. Packages stay outside the bundle.
import { rmSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const cache = path.resolve('node_modules/.cache/runwarm');

/** @param {string} name of the bundle @param {string} source the module's text, with paths from the project's root */
export async function importTypeScript(name, source) {
  const outfile = path.join(cache, `${name}-${process.pid}.mjs`);
  await build({
    stdin: { contents: source, resolveDir: process.cwd(), sourcefile: `${name}.ts`, loader: 'ts' },
    outfile,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: 'node20',
    conditions: ['source'],
    sourcemap: 'inline',
    logLevel: 'warning',
  });
  try {
    return await import(pathToFileURL(outfile).href);
  } finally {
    rmSync(outfile, { force: true });
  }
}
