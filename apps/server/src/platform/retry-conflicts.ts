import { isWriteConflict } from '#libs/db';

const ATTEMPTS = 5;

/** A transaction that lost a race (deadlock, serialization) is begun again: nothing of it was kept. */
export async function retryConflicts<T>(work: () => Promise<T>): Promise<T> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await work();
    } catch (error) {
      if (attempt >= ATTEMPTS || !isWriteConflict(error)) throw error;
      await new Promise((resolve) => setTimeout(resolve, 10 * 2 ** attempt));
    }
  }
}
