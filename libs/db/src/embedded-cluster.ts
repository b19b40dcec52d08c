import { randomBytes } from 'node:crypto';
import { mkdtemp, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { DatabaseStartError } from './database-start-error.ts';
import type { Identity } from './embedded-identity.ts';
import { give } from './embedded-place.ts';
import type { Programs } from './embedded-programs.ts';

const PASSWORD_FILE = 'app.password';
const LEFT_BEHIND_MS = 10 * 60_000;

const isMissing = (error: NodeJS.ErrnoException): undefined => {
  if (error.code === 'ENOENT') return undefined;
  throw error;
};

/** What a first start that was killed left behind. */
async function dropUnfinished(place: string): Promise<void> {
  const parent = path.dirname(place);
  for (const name of await readdir(parent)) {
    if (!name.startsWith(`${path.basename(place)}.init-`)) continue;
    const file = path.join(parent, name);
    const { mtimeMs } = await stat(file);
    if (Date.now() - mtimeMs > LEFT_BEHIND_MS) await rm(file, { recursive: true, force: true });
  }
}

/** Made beside its place and renamed when complete: two first starts can't mix, and a killed one leaves no half cluster. */
async function createCluster(place: string, identity: Identity, { initdb }: Programs): Promise<void> {
  await dropUnfinished(place);
  const fresh = await mkdtemp(`${place}.init-`);
  const data = path.join(fresh, 'data');
  const passwordFile = path.join(fresh, 'password');
  try {
    await writeFile(passwordFile, randomBytes(24).toString('base64url'), { mode: 0o600 });
    await give(fresh, identity);
    await give(passwordFile, identity);
    await initdb(
      ...['-D', data, '-U', 'postgres', '--auth=scram-sha-256', `--pwfile=${passwordFile}`, '--encoding=UTF8'],
      ...['--locale-provider=builtin', '--builtin-locale=C.UTF-8', '--locale=C', '-c', 'timezone=UTC', '-c', 'log_timezone=UTC'],
    );
    await rename(passwordFile, path.join(data, PASSWORD_FILE));
    await rename(data, place).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'ENOTEMPTY' && error.code !== 'EEXIST') throw error; // another process was first
    });
  } finally {
    await rm(fresh, { recursive: true, force: true });
  }
}

/** Creates the cluster if there is none. Returns the superuser's password. */
export async function openCluster(place: string, identity: Identity, programs: Programs): Promise<string> {
  const version = async (): Promise<string | undefined> => readFile(path.join(place, 'PG_VERSION'), 'utf8').catch(isMissing);
  try {
    if ((await version()) === undefined) await createCluster(place, identity, programs);
    const found = (await version())?.trim();
    if (found === undefined)
      throw new DatabaseStartError(`${place} is not empty and holds no database: empty it, or choose another DATA_DIR`);
    const own = /\) (\d+)/.exec(await programs.pgCtl('--version'))?.[1];
    if (found !== own) {
      throw new DatabaseStartError(
        `The database in ${place} was made by PostgreSQL ${found}; this release brings ${own}. Start the release that made it.`,
      );
    }
    return await readFile(path.join(place, PASSWORD_FILE), 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EACCES') throw error;
    throw new DatabaseStartError(`The database in ${place} belongs to another user: start as that user, or choose another DATA_DIR`, {
      cause: error,
    });
  }
}
