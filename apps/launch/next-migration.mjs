// node apps/launch/next-migration.mjs <name>: writes prisma/migrations/<time>_<name>/migration.sql, the SQL that leads from the
// migrations to schema.prisma. A throw-away PostgreSQL replays the migrations; no data is touched.
// With --empty it writes a file for SQL by hand (constraints, triggers) where the schema has nothing new.
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { importTypeScript } from './bundle.mjs';

const [name, flag] = process.argv.slice(2).sort((a, b) => Number(a.startsWith('--')) - Number(b.startsWith('--')));
if (!name || !/^[a-z][a-z0-9_]*$/.test(name) || (flag !== undefined && flag !== '--empty')) {
  console.error('Usage: node apps/launch/next-migration.mjs <name_in_snake_case> [--empty], such as added_torque_to_step');
  process.exit(2);
}
const dir = path.resolve('prisma/migrations');
mkdirSync(dir, { recursive: true });
const lock = path.join(dir, 'migration_lock.toml');
if (!existsSync(lock)) writeFileSync(lock, 'provider = "postgresql"\n');

const { startEmbedded, nextMigration } = await importTypeScript(
  'next-migration',
  `export { startEmbedded } from './libs/db/src/embedded.ts';
   export { nextMigration } from './libs/db/src/migrate.ts';`,
);
const base = mkdtempSync(path.join(os.tmpdir(), 'runwarm-'));
chmodSync(base, 0o711); // closed by default, also to the user postgres, who runs the server when we are root
let sql;
try {
  const server = await startEmbedded({ dir: path.join(base, 'pg') });
  try {
    sql = await nextMigration({ connection: server.connection, schemaPath: path.resolve('prisma/schema.prisma'), dir });
  } finally {
    await server.release();
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
} finally {
  rmSync(base, { recursive: true, force: true });
}
if (sql !== undefined) {
  const empty = sql.trim() === '' || /^-- This is an empty migration\.\s*$/.test(sql);
  if (empty && flag !== '--empty') {
    console.log('The migrations already lead to schema.prisma: nothing to write (use --empty for SQL by hand).');
  } else {
    const last =
      readdirSync(dir)
        .filter((entry) => /^\d{14}_/.test(entry))
        .sort()
        .at(-1)
        ?.slice(0, 14) ?? '0';
    const now = new Date().toISOString().replace(/\D/g, '').slice(0, 14);
    const time = now > last ? now : String(BigInt(last) + 1n);
    const file = path.join(dir, `${time}_${name}`, 'migration.sql');
    mkdirSync(path.dirname(file));
    writeFileSync(file, empty ? '' : `${sql.trimEnd()}\n`);
    console.log(`Written: ${path.relative(process.cwd(), file)}`);
  }
}
