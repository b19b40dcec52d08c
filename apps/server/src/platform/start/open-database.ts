import path from 'node:path';
import { type DatabaseServer, migrate, openDatabaseServer } from '#libs/db';
import type { Config } from '../config.ts';

/** The database that the configuration names, started if it is ours, with its migrations applied. */
export async function openDatabase({ dataDir, databaseUrl }: Config, say: (line: string) => void): Promise<DatabaseServer> {
  const server = await openDatabaseServer({ dataDir, databaseUrl, say });
  try {
    const applied = await migrate({
      connection: server.connection,
      schemaPath: path.resolve('prisma/schema.prisma'),
      dir: path.resolve('prisma/migrations'),
    });
    if (applied.length > 0) say(`Brought the database up to date: ${applied.length} ${applied.length === 1 ? 'change' : 'changes'}.`);
    return server;
  } catch (error) {
    await server.release();
    throw error;
  }
}
