// What must be there before the server or the tests can run: packages, the database client, the build.
import { runStep } from './child.mjs';
import { isFresh, refresh } from './freshness.mjs';
import { install, isInstalled } from './install.mjs';
import { withSetUpLock } from './set-up-lock.mjs';

const client = {
  inputs: ['prisma/schema.prisma', 'prisma.config.ts', 'package-lock.json', 'apps/launch/generate-client.mjs'],
  output: 'libs/db/src/generated/client.ts',
  stamp: 'libs/db/src/generated/.made-from',
};
const program = {
  inputs: ['apps', 'libs', 'seed', 'prisma/schema.prisma', 'package.json', 'package-lock.json', 'tsconfig.json', 'tsconfig.build.json'],
  output: 'dist/apps/server/src/main.js',
  stamp: 'dist/.made-from',
};

const node = (script, advice) => ({ command: process.execPath, args: [`apps/launch/${script}`], advice });
const FAULT = 'This is a fault in the sources: undo the last change to them, or get a fresh copy.';

export async function prepare() {
  if (isInstalled() && isFresh(client) && isFresh(program)) return;
  await withSetUpLock(async () => {
    if (!isInstalled()) await install();
    if (!isFresh(client)) await refresh(client, () => runStep('Making the database client', node('generate-client.mjs', FAULT)));
    if (isFresh(program)) return;
    await refresh(program, async () => {
      await runStep('Reading the descriptions of the API', node('openapi-metadata.mjs', FAULT));
      await runStep('Building the pages and the server', node('build.mjs', FAULT));
    });
  });
}
