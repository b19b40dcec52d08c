import { execFile } from 'node:child_process';
import { stat } from 'node:fs/promises';
import { promisify } from 'node:util';
import { DatabaseStartError } from './database-start-error.ts';

const run = promisify(execFile);

/** Whose PostgreSQL it is. Empty: our own. PostgreSQL refuses to run as root, who therefore lends it to another user. */
export interface Identity {
  uid?: number;
  gid?: number;
}

async function userId(flag: '-u' | '-g'): Promise<number> {
  return Number((await run('id', [flag, 'postgres'])).stdout);
}

async function postgresUser(): Promise<Identity> {
  try {
    return { uid: await userId('-u'), gid: await userId('-g') };
  } catch {
    await run('useradd', ['--system', '--user-group', '--no-create-home', '--shell', '/usr/sbin/nologin', 'postgres']).catch(
      (error: unknown) => {
        throw new DatabaseStartError(
          'As root, PostgreSQL runs as the user postgres, who could not be created: create that user, or start as another user',
          {
            cause: error,
          },
        );
      },
    );
    return { uid: await userId('-u'), gid: await userId('-g') };
  }
}

/** Root takes the identity of an existing cluster's owner, so that a start with sudo doesn't lock the owner out. */
export async function clusterIdentity(dir: string): Promise<Identity> {
  if (process.getuid?.() !== 0) return {};
  const owner = await stat(dir).catch(() => undefined);
  return owner && owner.uid !== 0 ? { uid: owner.uid, gid: owner.gid } : postgresUser();
}

/** Whether that user can search (-x) or write (-w) a path, all its parents included. */
export async function mayUse(identity: Identity, flag: '-x' | '-w', file: string): Promise<boolean> {
  return run('test', [flag, file], { ...identity, cwd: '/' }).then(
    () => true,
    () => false,
  );
}
