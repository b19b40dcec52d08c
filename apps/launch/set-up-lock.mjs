// One set-up at a time: a start and a test run in the same directory would install over one another.
import { createHash } from 'node:crypto';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { say } from './say.mjs';

const name = createHash('sha256').update(process.cwd()).digest('hex').slice(0, 12);
const file = path.join(os.tmpdir(), `runwarm-set-up-${name}.lock`);

function holder() {
  try {
    const pid = Number(readFileSync(file, 'utf8'));
    process.kill(pid, 0);
    return pid;
  } catch (error) {
    return error.code === 'EPERM' ? 'of another user' : undefined;
  }
}

function take() {
  try {
    writeFileSync(file, String(process.pid), { flag: 'wx' });
    return true;
  } catch (error) {
    if (error.code !== 'EEXIST') throw error;
    if (holder() === undefined) rmSync(file, { force: true });
    return false;
  }
}

export async function withSetUpLock(work) {
  for (let waited = false; !take(); waited = true) {
    const pid = holder();
    if (!waited && pid !== undefined) say(`Another set-up runs in this directory (process ${pid}): waiting for it …`);
    await sleep(200);
  }
  const release = () => rmSync(file, { force: true });
  process.on('exit', release);
  try {
    return await work();
  } finally {
    process.off('exit', release);
    release();
  }
}
