import { watch } from 'node:fs';
import { runStep } from './child.mjs';
import { say } from './say.mjs';
import { startServerProcess, stopWithParent } from './server-process.mjs';
import { setUp } from './set-up.mjs';

const QUIET_MS = 200;
const rebuild = { command: process.execPath, args: ['apps/launch/build.mjs', '--keep'], advice: 'The last good build goes on running.' };

export async function develop() {
  if (!(await setUp())) return;
  let server = startServerProcess();
  let isOver = false;
  stopWithParent(() => {
    isOver = true;
    server.stop();
    void server.ended.then((code) => process.exit(code));
  });

  let building = Promise.resolve();
  const restart = async () => {
    if (isOver) return;
    try {
      await runStep('Building again', rebuild);
    } catch (error) {
      say(error.message);
      return;
    }
    server.stop();
    await server.ended;
    if (!isOver) server = startServerProcess();
  };
  let timer;
  for (const dir of ['apps/server', 'libs', 'seed']) {
    watch(dir, { recursive: true }, (_, file) => {
      if (!file || /\.spec\.ts$|generated|openapi-metadata/.test(file)) return;
      clearTimeout(timer);
      timer = setTimeout(() => (building = building.then(restart)), QUIET_MS);
    });
  }
}
