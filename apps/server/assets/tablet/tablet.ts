import { placeIn, TabletApp } from './tablet-app.ts';
import { endOffers, showClocks } from './show-clocks.ts';
import { showKeypad } from './show-keypad.ts';
import { showVerdict } from './show-verdict.ts';
import { Store } from './store.ts';

const CARD = /^\/bays\/jobs\/[0-9a-f-]{36}\/card$/i;
const YEAR_S = 365 * 24 * 3600;

async function start(): Promise<void> {
  if (isSecureContext && 'serviceWorker' in navigator) void navigator.serviceWorker.register('/sw.js');
  const app = new TabletApp(await Store.open());
  if (!(await app.open(placeIn(location)))) return showServersPage();
  void navigator.storage?.persist?.();
  listen(app);
  document.documentElement.dataset['tablet'] = 'ready';
}

/** A card that is not among the day's works by the server's forms, as without this script. */
function showServersPage(): void {
  showKeypad();
  showVerdict();
  showClocks();
  endOffers();
  document.documentElement.dataset['tablet'] = 'server';
}

function listen(app: TabletApp): void {
  document.addEventListener('submit', (event) => takeForm(app, event));
  document.addEventListener('click', (event) => void followLink(app, event));
  window.addEventListener('popstate', () => void app.goTo(placeIn(location)));
  window.addEventListener('online', () => void app.contact());
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && void app.contact());
  for (const kind of ['pointerdown', 'keydown'] as const) document.addEventListener(kind, () => app.touched(), { passive: true });
}

function takeForm(app: TabletApp, event: SubmitEvent): void {
  const { target: form, submitter } = event;
  if (!(form instanceof HTMLFormElement) || form.classList.contains('lock')) return;
  const seen = form.dataset['seen'];
  const { pathname } = new URL(form.action, location.href);
  if (seen === undefined && pathname !== '/light' && !pathname.endsWith('/card/actions')) return;
  event.preventDefault();
  if (seen !== undefined) return void app.seen(seen);
  if (pathname === '/light') return changeLight(form, submitter);
  submitter?.setAttribute('aria-busy', 'true');
  void app.act(form, submitter);
}

function changeLight(form: HTMLFormElement, button: HTMLElement | null): void {
  const light = button instanceof HTMLButtonElement ? button.value : 'day';
  document.documentElement.dataset['light'] = light;
  document.cookie = `light=${light}; path=/; max-age=${YEAR_S}; samesite=lax`;
  for (const one of form.querySelectorAll('button')) one.setAttribute('aria-pressed', String(one.value === light));
}

async function followLink(app: TabletApp, event: MouseEvent): Promise<void> {
  const link = event.target instanceof Element ? event.target.closest('a') : null;
  if (!link || event.defaultPrevented || event.ctrlKey || event.metaKey || link.origin !== location.origin) return;
  const { pathname, search, hash, href } = link;
  if (hash !== '' && pathname === location.pathname && search === location.search) return;
  const isCard = CARD.test(pathname);
  if (!isCard && !app.isAway) return;
  event.preventDefault();
  if (isCard || pathname === '/bays') {
    history.pushState(null, '', href);
    if (!(await app.goTo(placeIn(link)))) location.assign(href);
    document.getElementById('work')?.focus();
    return;
  }
  if (await app.canLeave(link.textContent?.trim() ?? '')) location.assign(href);
}

start().catch(() => {
  // The server's page stands as it came: what is recorded goes straight to the server.
  showServersPage();
});
