import type { FastifyReply } from 'fastify';

type Layout = 'main' | 'tablet' | 'door';

/** One view engine per layout: each is registered under its own name, since a layout can't be chosen per render once one is set. */
export const VIEW_NAMES: Readonly<Record<Layout, { propertyName: string; asyncPropertyName: string }>> = {
  main: { propertyName: 'view', asyncPropertyName: 'viewAsync' },
  tablet: { propertyName: 'tabletView', asyncPropertyName: 'tabletViewAsync' },
  door: { propertyName: 'doorView', asyncPropertyName: 'doorViewAsync' },
};

/** Sends a page in the named layout, where `@Render` (always the main one) won't do. */
export async function sendPage(
  reply: FastifyReply,
  { layout, template, view }: { layout: Layout; template: string; view: object },
): Promise<void> {
  const engines = reply as unknown as Record<string, (template: string, view: object) => Promise<string>>;
  const render = engines[VIEW_NAMES[layout].asyncPropertyName];
  if (!render) throw new Error(`No view engine is registered for the layout ${layout}`);
  await reply.type('text/html; charset=utf-8').send(await render.call(reply, template, view));
}
