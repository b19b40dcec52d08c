import { execFile } from 'node:child_process';
import { readFile, realpath, rm } from 'node:fs/promises';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { promisify } from 'node:util';
import { DatabaseStartError } from './database-start-error.ts';

const run = promisify(execFile);
const PATIENCE_MS = 10_000;

/** A server, as its postmaster.pid tells. */
export interface Postmaster {
  pid: number;
  port: number;
  socketDir: string;
}

const pidFile = (place: string): string => path.join(place, 'postmaster.pid');
const textOf = (file: string): Promise<string> => readFile(file, 'utf8').catch(() => '');

async function readPidFile(place: string): Promise<(Postmaster & { memoryId: string }) | undefined> {
  const lines = (await textOf(pidFile(place))).split('\n');
  const pid = Number(lines[0]);
  if (!(pid > 0)) return undefined;
  return { pid, port: Number(lines[3]), socketDir: (lines[4] ?? '').trim(), memoryId: (lines[6] ?? '').trim().split(/\s+/)[1] ?? '' };
}

function exists(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** By the command line: a zombie has none left, a program that only got the same number has another. */
async function serves(pid: number, place: string): Promise<boolean> {
  if (process.platform !== 'linux') {
    const { stdout } = await run('ps', ['-o', 'command=', '-p', String(pid)]).catch(() => ({ stdout: '' }));
    return stdout.includes(place);
  }
  const words = (await textOf(`/proc/${pid}/cmdline`)).split('\0');
  const dir = words[words.indexOf('-D') + 1];
  return words.includes('-D') && dir !== undefined && (await realpath(dir).catch(() => dir)) === place;
}

/** The server that runs on this data directory, if one does. */
export async function runningPostmaster(dir: string): Promise<Postmaster | undefined> {
  const place = await realpath(dir).catch(() => dir);
  const found = await readPidFile(place);
  return found && (await serves(found.pid, place)) ? found : undefined;
}

/** Processes of a crashed server keep its shared memory attached; PostgreSQL's own guard asks the same. */
async function memoryInUse(memoryId: string): Promise<boolean> {
  const segments = (await textOf('/proc/sysvipc/shm')).split('\n').map((line) => line.trim().split(/\s+/));
  return segments.some(([, id, , , , , attached]) => id === memoryId && Number(attached) > 0);
}

/**
 * After a crash the number in postmaster.pid (and in the socket's lock) can belong to a zombie or to another program, and PostgreSQL then
 * refuses to start. The files may go only when no process of the old server is left, since they guard the data against a second server.
 */
export async function dropStalePidFile(dir: string): Promise<void> {
  const place = await realpath(dir);
  const found = await readPidFile(place);
  if (!found || !exists(found.pid) || (await serves(found.pid, place))) return;
  for (const deadline = Date.now() + PATIENCE_MS; await memoryInUse(found.memoryId); await sleep(100)) {
    if (Date.now() > deadline)
      throw new DatabaseStartError(`Processes of a PostgreSQL that crashed still use ${place}: end them, then start again`);
  }
  if (found.socketDir !== '') await rm(path.join(found.socketDir, `.s.PGSQL.${found.port}.lock`), { force: true });
  await rm(pidFile(place), { force: true });
}
