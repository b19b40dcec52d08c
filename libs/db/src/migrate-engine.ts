import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import type pg from 'pg';
import { migrationAdapter } from './migrate-adapter.ts';

/** What is used here of the schema engine that `prisma migrate` runs, called in process. */
export interface Engine {
  diff(params: unknown): Promise<{ stdout: string | null }>;
  applyMigrations(params: unknown): Promise<{ appliedMigrationNames: string[] }>;
  markMigrationRolledBack(params: { migrationName: string }): Promise<unknown>;
  free(): void;
}
interface EngineModule {
  SchemaEngine: { new: (...args: unknown[]) => Promise<Engine> };
}

// The engine reports a panic here.
(globalThis as Record<string, unknown>)['PRISMA_WASM_PANIC_REGISTRY'] = {
  set_message: (message: string) => {
    throw new Error(`schema engine: ${message}`);
  },
};

const require = createRequire(import.meta.url);
let engineModule: EngineModule | undefined;

async function loadEngine(): Promise<EngineModule> {
  if (engineModule) return engineModule;
  const glue = (await import('@prisma/schema-engine-wasm/schema_engine_bg')) as unknown as WebAssembly.ModuleImports &
    EngineModule & { __wbg_set_wasm: (exports: WebAssembly.Exports) => void };
  const file = require.resolve('@prisma/schema-engine-wasm').replace('schema_engine.js', 'schema_engine_bg.wasm');
  // The engine never clears its 10 s lock timer, which would keep the process (and Jest) from ending.
  const imports = Object.fromEntries(
    Object.entries(glue).map(([name, value]): [string, unknown] => {
      if (!name.startsWith('__wbg_setTimeout') || typeof value !== 'function') return [name, value];
      const start = value as (...args: unknown[]) => NodeJS.Timeout;
      return [name, (...args: unknown[]) => start(...args).unref()];
    }),
  );
  const instance = new WebAssembly.Instance(new WebAssembly.Module(readFileSync(file)), { './schema_engine_bg.js': imports });
  glue.__wbg_set_wasm(instance.exports);
  (instance.exports['__wbindgen_start'] as () => void)();
  engineModule = glue;
  return glue;
}

export async function withEngine<T>(
  options: { connection: pg.ClientConfig; schemaPath: string },
  use: (engine: Engine, schema: string) => Promise<T>,
): Promise<T> {
  const { SchemaEngine } = await loadEngine();
  const schema = readFileSync(options.schemaPath, 'utf8');
  const { factory, close } = migrationAdapter(options.connection);
  const engine = await SchemaEngine.new(
    { datamodels: [['schema.prisma', schema]] },
    () => undefined,
    bindMigrationAwareSqlAdapterFactory(factory),
  );
  try {
    return await use(engine, schema);
  } finally {
    engine.free();
    await close();
  }
}
