import { randomUUID } from 'node:crypto';
import type { Server } from 'node:http';
import path from 'node:path';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { hash } from '@node-rs/argon2';
import request from 'supertest';
import { createApp } from '../../apps/server/src/app.setup.ts';
import { TEMPLATES } from '#libs/checklist';
import { partFamilies } from '#libs/fitment';
import type { Connection, Database, Prisma } from '#libs/db';
import { emptyTables, openTestDatabase } from './database.ts';
import { unescapeHtml } from './page-forms.ts';
import { TestClock } from './test-clock.ts';

export type Agent = ReturnType<typeof request.agent>;
export type StaffName = 'desk' | 'tech' | 'owner';

export const SECRET = 'a secret for tests';
// Cheap on purpose: the tests sign in often, and guessing is not what they measure.
const SECRET_HASH = hash(SECRET, { memoryCost: 1024, timeCost: 1 });
const STAFF = [
  { name: 'desk', displayName: 'Ines', role: 'desk' },
  { name: 'tech', displayName: 'Jory', role: 'technician' },
  { name: 'owner', displayName: 'Dagny', role: 'owner' },
] as const;

export interface TestApp {
  app: NestFastifyApplication;
  http: Server;
  db: Database;
  connection: Connection;
  clock: TestClock;
  /** Empties the database and puts the workshop and its three people into it. */
  furnish: () => Promise<Record<StaffName, string>>;
  /** An agent with the session of that person. */
  as: (name: StaffName) => Promise<Agent>;
  close: () => Promise<void>;
}

/** The whole application on a real database, with a clock that the test sets. */
export async function openTestApp(): Promise<TestApp> {
  const { db, connection } = await openTestDatabase();
  await emptyTables(db);
  const clock = new TestClock();
  const app = await createApp({
    connection,
    clock,
    publicDir: path.resolve('dist/public'),
    worksByItself: false,
    production: true,
    logger: false,
  });
  await app.init();
  await app.getHttpAdapter().getInstance().ready();
  const http = app.getHttpServer();
  return {
    app,
    http,
    db,
    connection,
    clock,
    furnish: () => furnish(db),
    as: (name) => signIn(http, name),
    close: async () => {
      await app.close();
      await db.$disconnect();
    },
  };
}

async function furnish(db: Database): Promise<Record<StaffName, string>> {
  await emptyTables(db);
  await db.workshop.create({
    data: {
      id: 1,
      name: 'Testbed Motors',
      addressLines: ['1 Proving Lane'],
      postcode: 'TB1 1AA',
      city: 'Testbed',
      country: 'IE',
      vatId: 'IE0000000T',
      timeZone: 'Europe/Dublin',
      labourRate: '60.00',
      partsMarkupPct: '25',
      wasteChargePerL: '0.90',
      vatRatePct: '23',
    },
  });
  await db.jobTemplate.createMany({
    data: TEMPLATES.map((template) => ({
      key: template.key,
      version: template.version,
      name: template.name,
      definition: template as unknown as Prisma.InputJsonObject,
    })),
  });
  await db.partFamily.createMany({
    data: partFamilies.map((family) => ({
      key: family.id,
      version: 1,
      name: family.name,
      features: family as unknown as Prisma.InputJsonObject,
    })),
  });
  const secretHash = await SECRET_HASH;
  const ids: Partial<Record<StaffName, string>> = {};
  for (const member of STAFF) ids[member.name] = (await db.staff.create({ data: { ...member, secretHash } })).id;
  return ids as Record<StaffName, string>;
}

async function signIn(http: Server, name: StaffName): Promise<Agent> {
  const agent = request.agent(http);
  await agent.post('/api/v1/session').send({ name, secret: SECRET }).expect(200);
  return agent;
}

/** The hidden marks of the named form of a page, or of its first beside the way out, for a POST as a browser would send it. */
export function formMarks(html: string, form?: string): Record<string, string> {
  const forms = html.split('<form').slice(1);
  const wanted = forms.find(
    (text) => text.includes('name="_page"') && (form === undefined || text.includes(`name="_form" value="${form}"`)),
  );
  const read = (name: string): string => new RegExp(`name="${name}" value="([^"]*)"`).exec(wanted ?? '')?.[1] ?? '';
  return { _csrf: read('_csrf'), _key: read('_key') || randomUUID(), _page: unescapeHtml(read('_page')), _form: read('_form') };
}

/** Headers of a state-changing API call with a session. */
export const apiHeaders = (key: string = randomUUID()): Record<string, string> => ({ 'x-requested-with': 'fetch', 'idempotency-key': key });
