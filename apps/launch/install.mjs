// Packages: installed from the lock file when what is in node_modules is not what the lock file says.
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { runStep } from './child.mjs';
import { isFresh, refresh } from './freshness.mjs';

// npm writes its own lock in node_modules last, so an install that was cut short doesn't count.
const packages = {
  inputs: ['package-lock.json'],
  output: 'node_modules/.package-lock.json',
  stamp: 'node_modules/.cache/runwarm/installed',
};

function packagesOf(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8')).packages;
  } catch {
    return undefined;
  }
}

/** An install by hand, which left no stamp of ours. */
function matchesLock() {
  const wanted = packagesOf('package-lock.json');
  const there = packagesOf(packages.output);
  if (!wanted || !there) return false;
  return Object.entries(wanted).every(([name, { version, integrity, optional }]) => {
    const found = there[name];
    return name === '' || (found ? found.version === version && found.integrity === integrity : optional === true);
  });
}

export const isInstalled = () => isFresh(packages) || matchesLock();

function npm() {
  const beside = path.resolve(path.dirname(process.execPath), '../lib/node_modules/npm/bin/npm-cli.js');
  const script = [process.env.npm_execpath ?? '', beside].find((file) => file.endsWith('npm-cli.js') && existsSync(file));
  return script ? { command: process.execPath, before: [script] } : { command: 'npm', before: [] };
}

export async function install() {
  const { command, before } = npm();
  await refresh(packages, () =>
    runStep('Installing packages from the lock file (half a minute, longer on a slow line)', {
      command,
      args: [...before, 'ci', '--include=dev', '--include=optional', '--no-audit', '--no-fund', '--loglevel=error'],
      advice:
        'The packages could not be installed. Check that this machine reaches the npm registry (npm ping) and that the disk has 1 GB free, then run the same command again.',
    }),
  );
}
