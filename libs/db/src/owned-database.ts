import pg from 'pg';
import type { Connection } from './connection.ts';

const ALREADY_THERE = new Set(['42P04', '42710', '23505']); // 23505: two processes created it in the same moment

async function createUnlessThere(client: pg.Client, statement: string): Promise<void> {
  await client.query(statement).catch((error: unknown) => {
    if (!(error instanceof pg.DatabaseError && ALREADY_THERE.has(error.code ?? ''))) throw error;
  });
}

/** The application's database and its owner, an ordinary role of the same name; created if missing. Needs the superuser. */
export async function createOwnedDatabase(server: Connection, name: string): Promise<Connection> {
  const client = new pg.Client(server);
  await client.connect();
  try {
    const owner = client.escapeIdentifier(name);
    const { rows } = await client.query<{ role: boolean; database: boolean }>(
      `select exists (select from pg_roles where rolname = $1) as role, exists (select from pg_database where datname = $1) as database`,
      [name],
    );
    if (!rows[0]?.role) await createUnlessThere(client, `create role ${owner} login password ${client.escapeLiteral(server.password)}`);
    if (!rows[0]?.database) await createUnlessThere(client, `create database ${owner} owner ${owner}`);
  } finally {
    await client.end();
  }
  return { ...server, user: name, database: name };
}
