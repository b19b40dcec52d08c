declare const __PRECACHE__: string[];
declare const __VERSION__: string;

const worker = globalThis as unknown as ServiceWorkerGlobalScope;

const SHELL = '/tablet/shell';
/** A network that is there and answers nothing is none. */
const PATIENCE_MS = 3_000;
const CACHE = `runwarm ${__VERSION__.length} ${hash(__VERSION__)}`;

/** Short, of the names of the files: another build is another cache. */
function hash(text: string): string {
  let sum = 5381;
  for (const character of text) sum = (sum * 33 + (character.codePointAt(0) ?? 0)) | 0;
  return (sum >>> 0).toString(36);
}

/** Without cookies: nothing of a person is in what is kept. */
async function keepFiles(): Promise<void> {
  const cache = await caches.open(CACHE);
  await Promise.all(
    __PRECACHE__.map(async (address) => {
      const answer = await fetch(address, { credentials: 'omit', cache: 'reload' });
      if (!answer.ok) throw new Error(`${address} answered ${answer.status}`);
      await cache.put(address, answer);
    }),
  );
}

async function dropOldFiles(): Promise<void> {
  for (const name of await caches.keys()) if (name.startsWith('runwarm ') && name !== CACHE) await caches.delete(name);
}

async function fromCache(address: string): Promise<Response | undefined> {
  return (await caches.open(CACHE)).match(address);
}

/** The server's page where it answers; else the tablet's own, which draws from what it has. */
async function page(request: Request): Promise<Response> {
  try {
    return await fetch(request, { signal: AbortSignal.timeout(PATIENCE_MS) });
  } catch {
    return (await fromCache(SHELL)) ?? Response.error();
  }
}

worker.addEventListener('install', (event) => {
  event.waitUntil(keepFiles().then(() => worker.skipWaiting()));
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(dropOldFiles().then(() => worker.clients.claim()));
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== worker.location.origin) return;
  if (request.mode === 'navigate') event.respondWith(page(request));
  else if (pathname.startsWith('/assets/')) event.respondWith(fromCache(pathname).then((found) => found ?? fetch(request)));
});
