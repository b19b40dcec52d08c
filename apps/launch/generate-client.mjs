// The Prisma client. Prisma would download an engine binary; any existing file keeps it from that, and generate never runs it.
import { execFileSync } from 'node:child_process';

const env = { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, CHECKPOINT_DISABLE: '1', PRISMA_HIDE_UPDATE_MESSAGE: '1' };
execFileSync(process.execPath, ['node_modules/prisma/build/index.js', 'generate'], { stdio: 'inherit', env });
