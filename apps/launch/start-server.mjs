import { ensureBrowser } from './browser-install.mjs';
import { pagesUp } from './pages-up.mjs';
import { startServerProcess, stopWithParent } from './server-process.mjs';
import { setUp } from './set-up.mjs';

export async function start() {
  if (!(await setUp())) return;
  const server = startServerProcess();
  stopWithParent(server.stop);
  const browser = new AbortController();
  void pagesUp(server.ended).then((areUp) => areUp && ensureBrowser({ signal: browser.signal }));
  process.exitCode = await server.ended;
  browser.abort();
}
