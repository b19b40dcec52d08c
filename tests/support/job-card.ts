import { randomUUID } from 'node:crypto';
import { expect } from '@jest/globals';
import { type Agent, formMarks, type TestApp } from './test-app.ts';

export interface ReadCard {
  stage: string;
  steps: { key: string; state: string; value: unknown; why: string | null; can: boolean }[];
  holds: Record<string, { state: string; spent: boolean }>;
  facts: { jugsPoured: number; filledL: number; variant: string | null };
  differences: { actionId: string; code: string; why: string; isSettled: boolean }[];
  debts: { kind: string; state: string; due: string | null }[];
  findings: { words: string }[];
  checks: string[];
}

export interface Tap {
  id: string;
  kind: string;
  step: string;
  value: unknown;
  readAt: string;
}

/** One tap as a tablet sends it, at the time at which the tests' clock starts. */
export function tap(kind: string, step: string, value: unknown = null): Tap {
  return { id: randomUUID(), kind, step, value, readAt: '2026-06-09T08:00:00.000Z' };
}

/** A thermostat job of a customer, on no stage yet. @returns its id. */
export async function newThermostatJob({ db, clock }: TestApp, createdById: string): Promise<string> {
  const template = await db.jobTemplate.findFirstOrThrow({ where: { key: 'thermostat' } });
  const customer = await db.customer.create({ data: { name: 'Odile Quill' } });
  const registration = `TQ${randomUUID().slice(0, 6).toUpperCase()}`;
  const vehicle = await db.vehicle.create({
    data: { customerId: customer.id, registration, make: 'Tamber', model: 'Orla', engineCode: 'TB14' },
  });
  const { id } = await db.job.create({
    data: {
      customerId: customer.id,
      vehicleId: vehicle.id,
      templateId: template.id,
      complaint: 'Heater lukewarm',
      createdAt: clock.now(),
      createdById,
    },
  });
  return id;
}

/** One job's card as a technician's browser and a tablet reach it. */
export class CardUnderTest {
  constructor(
    readonly job: string,
    private tech: Agent,
  ) {}

  signedInAgain(tech: Agent): void {
    this.tech = tech;
  }

  url(step?: string): string {
    return `/bays/jobs/${this.job}/card${step === undefined ? '' : `?step=${step}`}`;
  }

  get api(): string {
    return `/api/v1/job-cards/${this.job}`;
  }

  async send(...actions: readonly object[]): Promise<{ id: string; difference: string | null }[]> {
    const answer = await this.tech.post(`${this.api}/actions`).set('x-requested-with', 'fetch').send({ actions }).expect(200);
    return (answer.body as { acknowledged: { id: string; difference: string | null }[] }).acknowledged;
  }

  /** Taps that all have to fit. */
  async done(...actions: readonly object[]): Promise<void> {
    expect((await this.send(...actions)).map(({ difference }) => difference)).toEqual(actions.map(() => null));
  }

  async read(): Promise<ReadCard> {
    return (await this.tech.get(this.api).expect(200)).body as ReadCard;
  }

  async step(key: string): Promise<ReadCard['steps'][number] | undefined> {
    return (await this.read()).steps.find((step) => step.key === key);
  }

  async hold(key: string): Promise<string | undefined> {
    return (await this.read()).holds[key]?.state;
  }

  async page(step?: string, agent: Agent = this.tech): Promise<string> {
    const { text } = await agent.get(this.url(step)).expect(200);
    return text.replaceAll('&#x27;', "'").replaceAll('&#x3D;', '=');
  }

  /** The hidden marks of a form on a step's page. */
  async marks(step: string, form: string, agent: Agent = this.tech): Promise<Record<string, string>> {
    const html = await this.page(step, agent);
    expect(html).toContain(`name="_form" value="${form}"`);
    return { ...formMarks(html, form), step };
  }

  /** Fills in the named form of a step's page and sends it as a browser would. @returns where that leads. */
  async submit(step: string, form: string, body: Record<string, string>, { agent = this.tech, to = 'actions' } = {}): Promise<string> {
    const marks = await this.marks(step, form, agent);
    const answer = await agent
      .post(`${this.url()}/${to}`)
      .type('form')
      .send({ ...marks, ...body });
    expect(answer.status).toBe(303);
    return String(answer.headers['location']);
  }
}

const COLD = { tempC: 30, instrument: 'contact-probe', place: 'top-hose', pressure: 'none', hose: 'soft' };
const TORQUE = { setAt: 9, unit: 'Nm', tightened: 2, of: 2, inSequence: true, document: 'Workshop manual', page: '19-12', thread: 'M6' };

/** The job up to a point of it, in taps. */
export const takenIn = (): Tap[] => [tap('tick', 'keys-tagged'), tap('record', 'odometer', { value: 123_400 })];

export const opened = (): Tap[] => [
  ...takenIn(),
  tap('pass', 'measured-cold', COLD),
  tap('record', 'level-on-arrival', { belowMarkMl: 400 }),
  tap('tick', 'cap-off'),
  tap('record', 'drained', { litres: 4.2 }),
  tap('record', 'kept', { litres: 1 }),
];

export const closedUp = (): Tap[] => [
  ...opened(),
  tap('pass', 'variant', { variant: 'HM-T88', basis: 'side-by-side' }),
  tap('tick', 'fitted'),
  tap('pass', 'torqued', TORQUE),
];

export const proven = (): Tap[] => [
  ...closedUp(),
  tap('record', 'first-fill', { productMl: 2000, waterMl: 2000 }),
  tap('pass', 'tools-counted', { counted: 12, of: 12 }),
  tap('tick', 'run-hot'),
  tap('record', 'heater-hoses', { choice: 'both-hot' }),
  tap('record', 'radiator-side', { choice: 'cold-to-hot' }),
  tap('record', 'no-leak', { choice: 'none' }),
];
