import { randomUUID } from 'node:crypto';
import { PrismaPg } from '@prisma/adapter-pg';
import {
  ColumnTypeEnum,
  DriverAdapterError,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils';
import pg from 'pg';

const PG_CHAR = 18; // catalogue type "char": the adapter refuses it, though the engine's own introspection selects it
const PG_BPCHAR = 1042;

/** A pool that shows "char" columns as text, and remembers which they were. */
function cataloguePool(config: pg.PoolConfig): { pool: pg.Pool; charColumns: WeakMap<object, number[]> } {
  const pool = new pg.Pool(config);
  const charColumns = new WeakMap<object, number[]>();
  const query = pool.query.bind(pool) as (...args: unknown[]) => Promise<pg.QueryResult>;
  pool.query = (async (...args: unknown[]) => {
    const result = await query(...args);
    const found = (result.fields ?? []).flatMap((field, index) => (field.dataTypeID === PG_CHAR ? [{ field, index }] : []));
    for (const { field } of found) field.dataTypeID = PG_BPCHAR;
    if (found.length > 0)
      charColumns.set(
        result.rows,
        found.map(({ index }) => index),
      );
    return result;
  }) as typeof pool.query;
  return { pool, charColumns };
}

function asDriverError(error: unknown): never {
  if (!(error instanceof pg.DatabaseError)) throw error;
  const { code = 'XX000', severity = 'ERROR', message, detail, column, hint } = error;
  throw new DriverAdapterError({ kind: 'postgres', code, severity, message, detail, column, hint });
}

async function openAdapter(config: pg.PoolConfig): Promise<{ adapter: SqlDriverAdapter; end: () => Promise<void> }> {
  const { pool, charColumns } = cataloguePool({ ...config, max: 2 });
  const adapter = await new PrismaPg(pool).connect();
  // PrismaPg splits a script at every ';', also inside $$ … $$.
  adapter.executeScript = async (script) => {
    await pool.query(script).catch(asDriverError);
  };
  const queryRaw = adapter.queryRaw.bind(adapter);
  adapter.queryRaw = async (params) => {
    const set = await queryRaw(params);
    for (const index of charColumns.get(set.rows) ?? []) set.columnTypes[index] = ColumnTypeEnum.Character;
    return set;
  };
  return { adapter, end: () => pool.end() };
}

async function runOnce(config: pg.ClientConfig, sql: string): Promise<void> {
  const client = new pg.Client(config);
  await client.connect();
  await client.query(sql).finally(() => client.end());
}

/** PrismaPg, with connections that can be closed and a shadow database that really is another database. */
export function migrationAdapter(config: pg.ClientConfig): { factory: SqlMigrationAwareDriverAdapterFactory; close: () => Promise<void> } {
  const open = new Set<() => Promise<void>>();
  const connect = async (database: string | undefined, after?: () => Promise<void>): Promise<SqlDriverAdapter> => {
    const { adapter, end } = await openAdapter({ ...config, database });
    const dispose = async (): Promise<void> => {
      if (!open.delete(dispose)) return;
      await end();
      await after?.();
    };
    open.add(dispose);
    adapter.dispose = dispose;
    return adapter;
  };
  const factory: SqlMigrationAwareDriverAdapterFactory = {
    provider: 'postgres',
    adapterName: '@prisma/adapter-pg',
    connect: () => connect(config.database),
    connectToShadowDb: async () => {
      const name = `shadow_${randomUUID().replaceAll('-', '')}`;
      await runOnce(config, `create database "${name}"`);
      return connect(name, () => runOnce(config, `drop database "${name}" with (force)`));
    },
  };
  const close = async (): Promise<void> => {
    for (const dispose of [...open]) await dispose();
  };
  return { factory, close };
}
