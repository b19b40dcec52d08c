import path from 'node:path';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { type Connection, createDatabase, type Database, type DatabaseServer } from '#libs/db';
import { type Config, ConfigError, isLoopback } from '../config.ts';
import { decideDemo, type StartDecision } from './demo-decision.ts';
import { openDatabase } from './open-database.ts';

export interface Hands {
  createApp: (options: {
    connection: Connection;
    publicDir: string;
    production: boolean;
    trustProxy: boolean;
    isDemo: boolean;
  }) => Promise<NestFastifyApplication>;
  seedDemo: (db: Database, options: { now: Date; say: (line: string) => void }) => Promise<{ staff: readonly string[]; secret: string }>;
}

const say = (line: string): void => void process.stdout.write(`${line}\n`);

/** Database, demo or owner's set-up, application, port; then waits for the signal to close in the opposite order. */
export async function openWorkshop(config: Config, hands: Hands): Promise<void> {
  const opening = openDatabase(config, say);
  let app: NestFastifyApplication | undefined;
  let closing: Promise<void> | undefined;
  // Listened for from the first moment: a database that is still starting is waited for, then stopped.
  const close = (): Promise<void> =>
    (closing ??= (async () => {
      await app?.close();
      await (await opening.catch(() => undefined))?.release();
    })());
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    process.once(signal, () => void close().then(() => process.exit(0)));
  }
  try {
    const database = await opening;
    const { decision, staff } = await prepare(config, { database, hands });
    app = await hands.createApp({
      connection: database.connection,
      publicDir: path.resolve('dist/public'),
      production: true,
      trustProxy: config.trustProxy,
      isDemo: decision.kind === 'seed-demo' || (decision.kind === 'open' && decision.isDemo),
    });
    // Until there is an owner, whoever came first on the network could become one.
    const host = decision.kind === 'ask-owner' ? '127.0.0.1' : config.host;
    await app.listen(config.port, host);
    say(`Runwarm is open at ${(await app.getUrl()).replace('[::1]', 'localhost')}`);
    if (decision.kind === 'ask-owner')
      say('Nobody owns this workshop yet: open that address on this machine and say who does. Then start again.');
    else if (staff) say(staff);
  } catch (error) {
    await close();
    throw error;
  }
}

async function prepare(
  config: Config,
  { database, hands }: { database: DatabaseServer; hands: Hands },
): Promise<{ decision: StartDecision; staff: string | undefined }> {
  const db = createDatabase(database.connection);
  try {
    const workshop = await db.workshop.findUnique({ where: { id: 1 }, select: { isDemo: true } });
    const decision = decideDemo({
      demo: config.demo,
      isEmbedded: database.kind === 'embedded',
      isLoopback: isLoopback(config.host),
      databaseIsDemo: workshop?.isDemo,
    });
    if (decision.kind === 'refuse') throw new ConfigError(decision.why);
    if (decision.kind === 'seed-demo') {
      say('Furnishing the demo workshop: invented customers, cars and parts.');
      const { staff, secret } = await hands.seedDemo(db, { now: new Date(), say });
      return { decision, staff: signInLine(staff, secret) };
    }
    const isDemo = decision.kind === 'open' && decision.isDemo;
    return { decision, staff: isDemo ? signInLine(['desk', 'tech', 'owner'], 'demo-workshop') : undefined };
  } finally {
    await db.$disconnect();
  }
}

const signInLine = (staff: readonly string[], secret: string): string => `Demo staff: ${staff.join(', ')}. Their secret: ${secret}`;
