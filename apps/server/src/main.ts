import { seedDemo } from '../../../seed/src/seed-demo.ts';
import { createApp } from './app.setup.ts';
import { ConfigError, readConfig } from './platform/config.ts';
import { openWorkshop } from './platform/start/open-workshop.ts';

try {
  await openWorkshop(readConfig(process.env, process.cwd()), { createApp, seedDemo });
} catch (error) {
  if (!(error instanceof ConfigError)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exit(1);
}
