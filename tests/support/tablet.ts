import { randomUUID } from 'node:crypto';
import { hash } from '@node-rs/argon2';
import { expect } from '@jest/globals';
import request from 'supertest';
import { type Agent, formMarks, type StaffName, type TestApp } from './test-app.ts';

export const PIN = '2846';
const PIN_HASH = hash(PIN, { memoryCost: 1024, timeCost: 1 });

/** Everybody can sign in on tablets with the same PIN. */
export async function givePins({ db }: TestApp): Promise<void> {
  await db.staff.updateMany({ data: { pinHash: await PIN_HASH } });
}

/** A code for a tablet of this name, as the desk reads it from its page. */
export async function tabletCode(test: TestApp, name: string): Promise<string> {
  const desk = await test.as('desk');
  const { text } = await desk.get('/bays/tablets').expect(200);
  await desk
    .post('/bays/tablets')
    .type('form')
    .send({ ...formMarks(text, 'tablet'), name })
    .expect(303);
  const page = await desk.get('/bays/tablets').expect(200);
  return /code ([A-Z0-9]{4} [A-Z0-9]{4})/.exec(page.text)?.[1] ?? '';
}

/** An enrolled tablet with its own cookies. */
export class TestTablet {
  seq = 0;
  signIn: string | undefined;

  private constructor(
    readonly agent: Agent,
    readonly id: string,
  ) {}

  static async enrol(test: TestApp, name = 'Bay 1'): Promise<TestTablet> {
    const agent = request.agent(test.http);
    const { text } = await agent.get('/tablet').expect(200);
    await agent
      .post('/tablet/enrol')
      .type('form')
      .send({ ...formMarks(text, 'enrol'), code: await tabletCode(test, name) })
      .expect(303);
    const { id } = await test.db.tablet.findFirstOrThrow({ where: { name, revokedAt: null } });
    return new TestTablet(agent, id);
  }

  async pin(staffId: string, pin = PIN): Promise<number> {
    const answer = await this.agent.post('/api/v1/tablet/sign-in').set('x-requested-with', 'fetch').send({ staffId, pin });
    if (answer.status === 200) this.signIn = (answer.body as { signIn: string }).signIn;
    return answer.status;
  }

  /** One entry as the outbox holds it. */
  entry(card: string, by: string, act: { kind: string; step: string; value?: unknown; readAt?: string }): Record<string, unknown> {
    this.seq += 1;
    return {
      ...{ id: randomUUID(), deviceSeq: this.seq, card, by, value: null, readAt: '2026-06-09T08:00:00.000Z', ...act },
      ...(this.signIn === undefined ? { byProof: 'picked-offline' } : { byProof: 'session', signIn: this.signIn }),
    };
  }

  async send(...actions: readonly object[]): Promise<{ id: string; state: string; why: string | null }[]> {
    const answer = await this.agent.post('/api/v1/tablet/actions').set('x-requested-with', 'fetch').send({ actions });
    expect(answer.status).toBe(200);
    return (answer.body as { answers: { id: string; state: string; why: string | null }[] }).answers;
  }

  async day(): Promise<{ cards: { row: { id: string }; actions: unknown[] }[]; lastSeq: number; missing: object[]; who: object | null }> {
    return (await this.agent.get('/api/v1/tablet/day').expect(200)).body as never;
  }
}

export type StaffIds = Record<StaffName, string>;
