import { randomBytes } from 'node:crypto';
import { chown, chmod, mkdir, mkdtemp, readlink, rmdir, stat, symlink } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { DatabaseStartError } from './database-start-error.ts';
import { type Identity, mayUse } from './embedded-identity.ts';

const SOCKET_DIR_BYTES = 90; // the system allows 107 with the socket's own name
const TEMPORARY_SOCKETS = 'runwarm-socket-';

export async function give(file: string, identity: Identity): Promise<void> {
  if (identity.uid !== undefined) await chown(file, identity.uid, identity.gid ?? identity.uid);
}

/** A directory that root keeps closed is opened to the cluster's group alone, and only for passing through. */
async function letPass(parent: string, identity: Identity): Promise<void> {
  if (!(await mayUse(identity, '-x', path.dirname(parent)))) return;
  const { uid, mode } = await stat(parent);
  if (uid !== 0 || identity.gid === undefined) return;
  await chown(parent, uid, identity.gid);
  await chmod(parent, (mode & 0o707) | 0o010);
}

/**
 * Where the cluster really lies: in `dir`, or, when its user can't get there (below root's home, for instance), in a directory of
 * /var/lib/runwarm that `dir` is then a link to.
 */
export async function clusterPlace(options: { dir: string; identity: Identity; say: (line: string) => void }): Promise<string> {
  const { dir, identity, say } = options;
  const parent = path.dirname(dir);
  await mkdir(parent, { recursive: true });
  const linked = await readlink(dir).catch(() => undefined);
  if (linked !== undefined) return path.resolve(parent, linked);
  if (identity.uid === undefined || (await mayUse(identity, '-x', parent))) return dir;
  await letPass(parent, identity);
  if (await mayUse(identity, '-x', parent)) return dir;
  if (await stat(dir).catch(() => undefined)) {
    throw new DatabaseStartError(
      `The user who runs PostgreSQL can't reach ${dir}: let others pass through the directories above it (chmod o+x)`,
    );
  }
  await mkdir('/var/lib/runwarm', { recursive: true });
  const place = `/var/lib/runwarm/pg-${randomBytes(6).toString('hex')}`;
  await symlink(place, dir);
  say(`The user postgres can't reach ${dir}: the database is kept in ${place}, and ${dir} is a link to it.`);
  return place;
}

/** Beside the cluster, or in the system's temporary directory where that path would be too long. */
export async function socketPlace(place: string, identity: Identity): Promise<string> {
  const beside = `${place}.socket`;
  if (Buffer.byteLength(beside) <= SOCKET_DIR_BYTES) {
    await mkdir(beside, { recursive: true, mode: 0o700 });
    await give(beside, identity);
    return beside;
  }
  for (const base of new Set([os.tmpdir(), '/tmp'])) {
    if (Buffer.byteLength(base) > SOCKET_DIR_BYTES - TEMPORARY_SOCKETS.length - 7) continue;
    if (identity.uid !== undefined && !(await mayUse(identity, '-x', base))) continue;
    const dir = await mkdtemp(path.join(base, TEMPORARY_SOCKETS));
    await give(dir, identity);
    return dir;
  }
  throw new DatabaseStartError(`No short path for the database's socket: ${beside} is too long. Set DATA_DIR to a shorter path.`);
}

/** Only a temporary one goes; the one beside the cluster is used again. */
export async function dropSocketPlace(dir: string): Promise<void> {
  if (path.basename(dir).startsWith(TEMPORARY_SOCKETS)) await rmdir(dir).catch(() => undefined);
}
