import { seedDemo } from '../../../seed/src/seed-demo.ts';
import { createApp } from './app.setup.ts';
import { DatabaseStartError } from '#libs/db';
import { ConfigError, readConfig } from './platform/config.ts';
import { openWorkshop } from './platform/start/open-workshop.ts';

try {
  await openWorkshop(readConfig(process.env, process.cwd()), { createApp, seedDemo });
} catch (error) {
  const words = wordsFor(error);
  if (words === undefined) throw error;
  process.stderr.write(`${words}\n`);
  process.exit(1);
}

/** What whoever started it can put right; anything else is a fault of ours and keeps its stack. */
function wordsFor(error: unknown): string | undefined {
  if (error instanceof ConfigError || error instanceof DatabaseStartError) return error.message;
  const { code, port } = error as { code?: unknown; port?: unknown };
  return code === 'EADDRINUSE' ? `Port ${String(port)} is taken by another program: stop it, or start with another PORT.` : undefined;
}
