import { chmod, mkdtemp, readdir, rm } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { type EmbeddedServer, startEmbedded, stopEmbedded } from '#libs/db';

const NAME = /^runwarm-test-(\d+)-/;
// The data is thrown away with the directory, so nothing need survive a power cut.
const settings = { fsync: 'off', synchronous_commit: 'off', full_page_writes: 'off', max_connections: '200' };

function lives(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Runs that were killed leave their server and its directory. */
export async function clearDeadRuns(): Promise<void> {
  const base = os.tmpdir();
  for (const name of await readdir(base)) {
    const pid = Number(NAME.exec(name)?.[1] ?? 0);
    if (pid === 0 || lives(pid)) continue;
    const dir = path.join(base, name);
    await stopEmbedded(path.join(dir, 'pg')).catch(() => undefined); // another user's, or being cleared by another run
    await rm(dir, { recursive: true, force: true }).catch(() => undefined);
  }
}

/** A server of this process alone, in a directory of its own, so that two runs at once don't meet. */
export async function startThrowAwayServer(): Promise<EmbeddedServer> {
  await clearDeadRuns();
  const dir = await mkdtemp(path.join(os.tmpdir(), `runwarm-test-${process.pid}-`));
  await chmod(dir, 0o711); // closed by default, also to the user postgres, who runs the server when we are root
  const server = await startEmbedded({ dir: path.join(dir, 'pg'), settings });
  return {
    ...server,
    release: async () => {
      const released = await server.release();
      await rm(dir, { recursive: true, force: true });
      return released;
    },
  };
}
