import path from 'node:path';
import { ensureBrowser } from './browser-install.mjs';
import { endSetUpOnSignals, failSetUp } from './child.mjs';
import { pagesUp } from './pages-up.mjs';
import { prepare } from './prepare.mjs';
import { startServerProcess, stopWithParent } from './server-process.mjs';

export async function start() {
  process.chdir(path.resolve(import.meta.dirname, '../..'));
  const setUpIsOver = endSetUpOnSignals();
  try {
    await prepare();
  } catch (error) {
    failSetUp(error);
    return;
  } finally {
    setUpIsOver();
  }
  const server = startServerProcess();
  stopWithParent(server.stop);
  const browser = new AbortController();
  void pagesUp(server.ended).then((areUp) => areUp && ensureBrowser({ signal: browser.signal }));
  process.exitCode = await server.ended;
  browser.abort();
}
