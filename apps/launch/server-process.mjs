// The server as a child in a process group of its own: a signal reaches it once and through us, however often and to whom it was sent.
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { say } from './say.mjs';

const PATIENCE_MS = 30_000;
/** What libraries say to one another's makers is nothing for a workshop's window; the tests still print it. */
const QUIET = '--disable-warning=DeprecationWarning';

/** @returns {{ ended: Promise<number>, stop: () => void }} */
export function startServerProcess() {
  const follow = pathToFileURL(path.resolve('apps/launch/follow-parent.mjs')).href;
  const child = spawn(process.execPath, ['--enable-source-maps', QUIET, '--import', follow, 'dist/apps/server/src/main.js'], {
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    detached: process.platform !== 'win32',
  });
  let stopping = false;
  const ended = new Promise((resolve) => {
    child.on('exit', (code, signal) => {
      if (signal && !stopping) say(`The server was ended from outside (${signal}). Start it again: nothing that was saved is lost.`);
      resolve(code ?? 1);
    });
    child.on('error', () => resolve(1));
  });
  const stop = () => {
    if (stopping) return;
    stopping = true;
    child.kill('SIGTERM');
    setTimeout(() => child.kill('SIGKILL'), PATIENCE_MS).unref();
  };
  return { ended, stop };
}

/** The parent, and npm above the shell that it ran us in: a shell outlives an npm that was killed. */
function callers() {
  const parent = process.ppid;
  try {
    const [, name, above] = /^\d+ \((.*)\) \S (\d+)/.exec(readFileSync(`/proc/${parent}/stat`, 'utf8')) ?? [];
    return name === 'sh' ? `${parent} ${above}` : `${parent}`;
  } catch {
    return `${parent}`; // no /proc on this system
  }
}

/** Ends with the signals, and with npm: when npm is killed, nobody else tells us. */
export function stopWithParent(stop) {
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, stop);
  if (process.env.npm_lifecycle_event === undefined) return;
  const before = callers();
  setInterval(() => callers() !== before && stop(), 250).unref();
}
