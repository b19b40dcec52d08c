// Packages: installed from the lock file when what is in node_modules is not what the lock file says.
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { runStep } from './child.mjs';

function packagesOf(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8')).packages;
  } catch {
    return undefined;
  }
}

/** npm writes node_modules/.package-lock.json last, so an install that was cut short doesn't count. */
export function isInstalled() {
  const wanted = packagesOf('package-lock.json');
  const there = packagesOf('node_modules/.package-lock.json');
  if (!wanted || !there) return false;
  return Object.entries(wanted).every(([name, { version, integrity, optional }]) => {
    const found = there[name];
    return name === '' || (found ? found.version === version && found.integrity === integrity : optional === true);
  });
}

function npm() {
  const beside = path.resolve(path.dirname(process.execPath), '../lib/node_modules/npm/bin/npm-cli.js');
  const script = [process.env.npm_execpath ?? '', beside].find((file) => file.endsWith('npm-cli.js') && existsSync(file));
  return script ? { command: process.execPath, before: [script] } : { command: 'npm', before: [] };
}

export async function install() {
  const { command, before } = npm();
  await runStep('Installing packages from the lock file (half a minute, longer on a slow line)', {
    command,
    args: [...before, 'ci', '--include=dev', '--include=optional', '--no-audit', '--no-fund', '--loglevel=error'],
    advice:
      'The packages could not be installed. Check that this machine reaches the npm registry (npm ping) and that the disk has 1 GB free, then run the same command again.',
  });
}
