import http from 'node:http';
import { setTimeout as sleep } from 'node:timers/promises';

function isHealthy(url) {
  return new Promise((resolve) => {
    const request = http.get(url, { timeout: 2_000 }, (response) => {
      response.resume();
      resolve(response.statusCode === 200);
    });
    request.on('timeout', () => request.destroy());
    request.on('error', () => resolve(false));
  });
}

/** Until the server answers; false when it ended before. */
export async function pagesUp(ended) {
  const host = process.env.HOST || '127.0.0.1';
  const reachable = { '0.0.0.0': '127.0.0.1', '::': '[::1]', '::1': '[::1]' }[host] ?? host;
  const url = `http://${reachable}:${process.env.PORT || 3000}/api/v1/health`;
  if (!URL.canParse(url)) return false; // the server says what is wrong with PORT or HOST
  let isOver = false;
  void ended.then(() => (isOver = true));
  while (!isOver) {
    if (await isHealthy(url)) return true;
    await sleep(250, undefined, { ref: false });
  }
  return false;
}
