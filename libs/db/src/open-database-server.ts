import path from 'node:path';
import type { Connection } from './connection.ts';
import { startEmbedded } from './embedded.ts';
import { checkExternalServer, parseDatabaseUrl } from './external.ts';
import { createOwnedDatabase } from './owned-database.ts';

export interface DatabaseServer {
  /** To the application's own database. */
  connection: Connection;
  kind: 'embedded' | 'external';
  /** Says where the data is, for the person who starts it. */
  place: string;
  release: () => Promise<'stopped' | 'still-used' | 'external'>;
}

/** The server that DATABASE_URL names, or the embedded one in `<dataDir>/pg`. */
export async function openDatabaseServer(options: {
  dataDir: string;
  databaseUrl?: string | undefined;
  say?: (line: string) => void;
}): Promise<DatabaseServer> {
  const { dataDir, databaseUrl = '', say = () => undefined } = options;
  if (databaseUrl !== '') {
    const connection = parseDatabaseUrl(databaseUrl);
    await checkExternalServer(connection);
    const place = `${connection.host}:${connection.port}/${connection.database}`;
    return { connection, kind: 'external', place, release: () => Promise.resolve('external') };
  }
  const server = await startEmbedded({ dir: path.join(dataDir, 'pg'), say });
  try {
    const connection = await createOwnedDatabase(server.connection, 'runwarm');
    return { connection, kind: 'embedded', place: server.place, release: server.release };
  } catch (error) {
    await server.release();
    throw error;
  }
}
