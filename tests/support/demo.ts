import { hash } from '@node-rs/argon2';
import { seedDemo } from '../../seed/src/seed-demo.ts';
import { emptyTables } from './database.ts';
import { openTestApp, SECRET, type TestApp } from './test-app.ts';

/** The moment at which the demo's clock stands still: a working morning. */
export const DEMO_NOW = new Date('2026-06-09T09:20:00Z');

export interface DemoApp extends TestApp {
  /** Where it listens, such as http://127.0.0.1:40123. */
  base: string;
}

/** The whole application on a port of its own, furnished with the demo workshop, its clock stopped at `DEMO_NOW`. */
export async function openDemo(): Promise<DemoApp> {
  const test = await openTestApp();
  test.clock.set(DEMO_NOW);
  await emptyTables(test.db); // the application has put its templates in, as the demo will
  await seedDemo(test.db, { now: DEMO_NOW, say: () => undefined });
  // Its people sign in as those of the other tests do, and cheaply.
  await test.db.staff.updateMany({ data: { secretHash: await hash(SECRET, { memoryCost: 1024, timeCost: 1 }) } });
  await test.app.listen(0, '127.0.0.1');
  return { ...test, base: await test.app.getUrl() };
}
