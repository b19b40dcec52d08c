import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

export interface MigrationFile {
  name: string;
  sql: string;
}

/** The migrations in the order of their names. */
export function migrationFiles(dir: string): MigrationFile[] {
  if (!existsSync(dir)) return [];
  return readdirSync(dir, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => ({ name, sql: readFileSync(path.join(dir, name, 'migration.sql'), 'utf8') }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** The folder as the schema engine wants it. */
export function migrationsList(dir: string): Record<string, unknown> {
  const lock = path.join(dir, 'migration_lock.toml');
  return {
    baseDir: dir,
    lockfile: { path: 'migration_lock.toml', content: existsSync(lock) ? readFileSync(lock, 'utf8') : null },
    shadowDbInitScript: '',
    migrationDirectories: migrationFiles(dir).map(({ name, sql }) => ({
      path: name,
      migrationFile: { path: 'migration.sql', content: { tag: 'ok', value: sql } },
    })),
  };
}

/** Names a database that these migrations made. */
export function migrationsHash(dir: string): string {
  return createHash('sha256')
    .update(JSON.stringify(migrationFiles(dir)))
    .digest('hex')
    .slice(0, 12);
}
