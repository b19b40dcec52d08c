import { Injectable } from '@nestjs/common';
import type { Prisma, Tx } from '#libs/db';

@Injectable()
export class StaffUnitsRepository {
  /** Changes what is named and leaves the rest, such as the unit of torques. @returns the units before and after. */
  async change(
    tx: Tx,
    staffId: string,
    chosen: Prisma.InputJsonObject,
  ): Promise<{ before: Prisma.InputJsonObject; after: Prisma.InputJsonObject }> {
    const { units } = await tx.staff.findUniqueOrThrow({ where: { id: staffId }, select: { units: true } });
    const before = (units ?? {}) as Prisma.InputJsonObject;
    const after = { ...before, ...chosen };
    await tx.staff.update({ where: { id: staffId }, data: { units: after } });
    return { before, after };
  }
}
