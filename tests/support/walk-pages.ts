import type { DeclaredRoute } from './routes.ts';
import { linksOf } from './page-forms.ts';

export interface SeenPage {
  address: string;
  route: DeclaredRoute;
  status: number;
  html: string;
}

/** The route that answers an address, the most literal first. */
export function routeOf(routes: readonly DeclaredRoute[], method: string, address: string): DeclaredRoute | undefined {
  const pathname = address.split('?')[0] ?? '';
  const literals = (path: string): number => path.split('/').filter((part) => part !== '' && !part.startsWith(':')).length;
  return routes
    .filter((route) => route.method === method && new RegExp(`^${route.path.replaceAll(/:[^/]+/g, '[^/]+')}$`).test(pathname))
    .sort((a, b) => literals(b.path) - literals(a.path))[0];
}

const queryNames = (address: string): string => [...new URLSearchParams(address.split('?')[1] ?? '').keys()].sort().join();

/**
 * Follows every link of our own from `start`; beside those, so many addresses of one kind (route and names of the query) at most.
 * Files other than pages are left out.
 */
export async function walkPages(
  start: readonly string[],
  {
    routes,
    most,
    get,
  }: { routes: readonly DeclaredRoute[]; most: number; get: (address: string) => Promise<{ status: number; html: string }> },
): Promise<SeenPage[]> {
  const seen = new Set<string>(start);
  const counts = new Map<string, number>();
  const pages: SeenPage[] = [];
  const queue = [...start];
  for (let address = queue.shift(); address !== undefined; address = queue.shift()) {
    const route = routeOf(routes, 'GET', address);
    if (!route || route.path.startsWith('/api/') || /\.(pdf|csv)$/.test(route.path)) continue;
    const kind = `${route.path}?${queryNames(address)}`;
    const count = (counts.get(kind) ?? 0) + 1;
    if (count > most && !start.includes(address)) continue;
    counts.set(kind, count);
    const { status, html } = await get(address);
    pages.push({ address, route, status, html });
    for (const link of linksOf(html)) {
      if (seen.has(link)) continue;
      seen.add(link);
      queue.push(link);
    }
  }
  return pages;
}
