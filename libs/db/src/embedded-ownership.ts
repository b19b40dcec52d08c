import pg from 'pg';
import type { Connection } from './connection.ts';

const OWNERS_LOCK = 7_420_001; // shared while a process uses the server

export type Released = 'stopped' | 'still-used';
export interface Ownership {
  /** Stops the server unless another process still uses it. */
  release: () => Promise<Released>;
}

async function connectAsOwner(connection: Connection, onEnd: () => void): Promise<pg.Client> {
  const client = new pg.Client({ ...connection, application_name: 'runwarm-owner', connectionTimeoutMillis: 10_000 });
  client.on('error', () => undefined); // 'end' follows
  client.on('end', onEnd);
  await client.connect();
  try {
    await client.query('select pg_advisory_lock_shared($1)', [OWNERS_LOCK]);
  } catch (error) {
    await client.end().catch(() => undefined);
    throw error;
  }
  return client;
}

/** Holds the shared lock on a connection of its own, and takes it again if that connection is lost. */
export async function ownServer(connection: Connection, stop: () => Promise<void>): Promise<Ownership> {
  let released: Promise<Released> | undefined;
  let client: pg.Client | undefined;
  let retry: NodeJS.Timeout | undefined;

  const onEnd = (): void => {
    client = undefined;
    if (released) return;
    retry = setTimeout(() => void hold().catch(onEnd), 500).unref();
  };
  const hold = async (): Promise<void> => {
    client = await connectAsOwner(connection, onEnd);
  };
  await hold();

  const letGo = async (): Promise<Released> => {
    clearTimeout(retry);
    try {
      client ??= await connectAsOwner(connection, () => undefined);
    } catch {
      return 'stopped'; // the server itself is gone
    }
    const last = client;
    await last.query('select pg_advisory_unlock_shared($1)', [OWNERS_LOCK]);
    const { rows } = await last.query<{ alone: boolean }>('select pg_try_advisory_lock($1) as alone', [OWNERS_LOCK]);
    const alone = rows[0]?.alone === true;
    if (alone) await stop();
    await last.end().catch(() => undefined);
    return alone ? 'stopped' : 'still-used';
  };
  return { release: () => (released ??= letGo()) };
}
