import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { foldCard, type Stage, THERMOSTAT_JOB } from '#libs/checklist';
import { Outbox, type Line } from '../../apps/server/assets/tablet/outbox.ts';
import type { Answer, Taken } from '../../apps/server/assets/tablet/answers.ts';
import { hashToken, newToken } from '../../apps/server/src/platform/access/tokens.ts';
import { makeJob } from '../support/factories.ts';
import { MemoryQueue } from '../support/memory-queue.ts';
import { pick, randomActs, seeded } from '../support/random-work.ts';
import { ServerChild } from '../support/server-child.ts';
import { openTestApp, type StaffName, type TestApp } from '../support/test-app.ts';

/** A run is two tablets at work on one card; `OUTBOX_RUNS=1000` for the long form. */
const RUNS = Number(process.env['OUTBOX_RUNS'] ?? 100);
const KILL_EVERY = 12;

let test: TestApp;
let staff: Record<StaffName, string>;
let server: ServerChild;
let tokens: readonly string[];
let killed = 0;
const counts = [0, 0];
beforeAll(async () => {
  test = await openTestApp();
  staff = await test.furnish();
  tokens = [newToken(), newToken()];
  const at = new Date();
  for (const [index, token] of tokens.entries()) {
    await test.db.tablet.create({
      data: { name: `Bay ${index + 1}`, tokenHash: hashToken(token), createdById: staff.desk, createdAt: at, enrolledAt: at },
    });
  }
  server = await ServerChild.start(test.connection);
}, 120_000);
afterAll(async () => {
  await server.kill();
  await test.close();
});

type Fault = 'none' | 'never-arrived' | 'answer-lost' | 'server-killed';

/** The way to the server, with what can go wrong on it. */
class FaultyLine implements Line {
  constructor(
    private readonly token: string,
    private readonly nextFault: () => Fault,
  ) {}

  take = async (actions: readonly object[]): Promise<Answer<{ answers: Taken[] }>> => {
    const fault = this.nextFault();
    const away = { ok: false, trouble: 'no-network', status: 0, why: '' } as const;
    if (fault === 'never-arrived') return away;
    try {
      const asked = fetch(`${server.base}/api/v1/tablet/actions`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'x-requested-with': 'fetch', cookie: `tablet=${this.token}` },
        body: JSON.stringify({ actions }),
      });
      if (fault === 'server-killed') {
        killed += 1;
        await new Promise((resolve) => setTimeout(resolve, Math.random() * 15));
        await server.kill();
        await server.again();
      }
      const answer = await asked;
      const body = (await answer.json()) as { answers: Taken[] };
      if (fault === 'answer-lost') return away;
      if (!answer.ok)
        return { ok: false, trouble: answer.status < 500 ? 'refused' : 'server-failed', status: answer.status, why: JSON.stringify(body) };
      return { ok: true, value: body };
    } catch {
      return away;
    }
  };

  photo = (): Promise<Answer<unknown>> => Promise.reject(new Error('No photo is taken here'));
}

const quiet = { changed: () => undefined, empty: () => undefined, later: () => undefined, offsetMs: () => 0 };

async function atWork(run: number): Promise<void> {
  const random = seeded(run + 1);
  const { jobId } = await makeJob(test.db, { deskId: staff.desk, registration: `RUN${run}` });
  await test.db.job.update({ where: { id: jobId }, data: { keyTag: null } });
  let kills = run % KILL_EVERY === 0 ? 1 : 0;
  const nextFault = (): Fault => {
    const fault = pick<Fault>(random, ['none', 'none', 'never-arrived', 'answer-lost', kills > 0 ? 'server-killed' : 'none']);
    if (fault === 'server-killed') kills -= 1;
    return fault;
  };
  const tablets = tokens.map((token, index) => ({
    queue: new MemoryQueue(jobId, staff.tech, () => (counts[index] = (counts[index] ?? 0) + 1)),
    line: new FaultyLine(token, nextFault),
  }));
  const began = Date.now();
  for (const [index, act] of randomActs(random, 14).entries()) {
    const { queue, line } = pick(random, tablets);
    queue.put(act, new Date(began + index * 1000).toISOString());
    // Each time another outbox on the same storage, as after a page that was killed.
    if (random() < 0.5) await new Outbox(queue, line, quiet).drain();
    if (random() < 0.1) await Promise.all(tablets.map((one) => new Outbox(one.queue, one.line, quiet).drain()));
  }
  for (const { queue, line } of tablets) {
    // The server may be on its way up again: a tablet waits between its tries too.
    for (let tries = 0; (await queue.countWaiting()) > 0 && tries < 600; tries += 1) {
      await new Outbox(queue, line, quiet).drain();
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
  }
  await compare(
    jobId,
    tablets.map(({ queue }) => queue),
  );
}

/** Everything once, each tablet's in its order, and the card as a model makes it that is fed in the server's order of receipt. */
async function compare(jobId: string, queues: readonly MemoryQueue[]): Promise<void> {
  const rows = await test.db.jobAction.findMany({ where: { jobId }, orderBy: { seq: 'asc' } });
  expect(queues.flatMap(({ unsaved }) => unsaved)).toEqual([]);
  expect(rows.map(({ id }) => id).sort()).toEqual(queues.flatMap(({ made }) => made).sort());
  for (const { made } of queues) {
    expect(rows.map(({ id }) => id).filter((id) => made.includes(id))).toEqual(made);
  }
  const model = foldCard(
    THERMOSTAT_JOB,
    rows.map((row) => ({
      ...{ id: row.id, card: row.jobId, kind: row.kind, step: row.step, value: row.value, readAt: row.readAt.toISOString(), by: row.byId },
      ...{ byProof: row.byProof, deviceId: row.deviceId, deviceSeq: row.deviceSeq },
    })),
    { startStage: 'spoken-of' as Stage },
  );
  const why = (id: string): string | null => model.differences.find(({ actionId }) => actionId === id)?.why ?? null;
  expect(rows.map(({ id, difference }) => [id, difference])).toEqual(rows.map(({ id }) => [id, why(id)]));
  const job = await test.db.job.findUniqueOrThrow({
    where: { id: jobId },
    include: { waits: { where: { endedAt: null } }, wasteEntries: true },
  });
  expect(job.stage).toBe(model.stage);
  expect(job.waits.map(({ kind }) => kind).sort()).toEqual([...new Set(model.waits.map(({ kind }) => kind))].sort());
  const wasteL = job.wasteEntries.reduce((sum, { volumeL }) => sum + volumeL.toNumber(), 0);
  expect(wasteL).toBeCloseTo(model.facts.numbers['wasteBookedL']?.value ?? 0, 6);
}

describe('the outbox against a server that dies and a network that lies', () => {
  it(
    `keeps every action of two tablets once and in order, ${RUNS} times`,
    async () => {
      for (let run = 0; run < RUNS; run += 1) {
        try {
          await atWork(run);
        } catch (error) {
          throw new Error(`Run ${run} went wrong`, { cause: error });
        }
      }
      expect(killed).toBeGreaterThanOrEqual(Math.floor(RUNS / KILL_EVERY / 2));
      expect(await test.db.tabletStray.count()).toBe(0);
    },
    RUNS * 6_000,
  );
});
