import type { Tx } from '#libs/db';
import { toWorkshop, type Workshop } from '../../apps/server/src/platform/workshop-facts.ts';

/** The demo's own settings as the till reads them. */
export async function demoWorkshop(tx: Tx): Promise<Workshop> {
  return toWorkshop(await tx.workshop.findUniqueOrThrow({ where: { id: 1 } }));
}
