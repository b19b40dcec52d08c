import type { FastifyRequest } from 'fastify';
import { urls } from '../../web/urls.ts';

/** A page's address, without and with what was typed. */
export interface Address {
  readonly path: string;
  readonly query: string;
}

export function addressOf({ url }: FastifyRequest): Address {
  const [path = '', query = ''] = url.split('?', 2);
  return { path, query };
}

/** Back to a page of the bench, and nowhere else. */
export function benchPage(back: string | undefined): string {
  const isOfBench = back !== undefined && back.startsWith(urls.coolantBench) && /^\/coolant-bench([/?][^\s\\]*)?$/.test(back);
  return isOfBench ? back : urls.coolantBench;
}
