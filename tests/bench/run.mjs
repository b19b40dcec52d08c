// npm run bench [-- <part of a name>]: bundles each *.bench.ts, calls its run() and prints what it measured.
import { readdirSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { importTypeScript } from '../../apps/launch/bundle.mjs';

process.chdir(path.resolve(import.meta.dirname, '../..'));
const [wanted = ''] = process.argv.slice(2);
const names = readdirSync('tests/bench').filter((name) => name.endsWith('.bench.ts') && name.includes(wanted));
if (names.length === 0) {
  console.error(wanted ? `No measurement's file name contains '${wanted}'` : 'There is no tests/bench/*.bench.ts yet');
  process.exitCode = 1;
}
console.log(`Node ${process.versions.node}, ${os.availableParallelism()} × ${os.cpus()[0]?.model.trim() ?? 'unknown processor'}`);
for (const file of names) {
  const name = path.basename(file, '.bench.ts');
  const { run } = await importTypeScript(`bench-${name}`, `export { run } from './tests/bench/${file}';`);
  console.log(`\n${name}`);
  const result = await run();
  if (Array.isArray(result)) console.table(result);
  else console.log(result);
}
