import { Prisma } from './generated/client.ts';

/** An update whose `where` names the version that was read: undefined where that row or version is no longer there. */
export async function ifCurrent<T>(update: Promise<T>): Promise<T | undefined> {
  try {
    return await update;
  } catch (error) {
    if (error instanceof Prisma.PrismaClientKnownRequestError && error.code === 'P2025') return undefined;
    throw error;
  }
}
