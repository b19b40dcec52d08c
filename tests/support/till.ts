import { expect } from '@jest/globals';
import { JobCards } from '../../apps/server/src/features/job-cards/job-cards.service.ts';
import { actionsBy, makeJob, sayYes } from './factories.ts';
import { type Agent, formMarks, type StaffName, type TestApp } from './test-app.ts';
import { thermostatCard } from './thermostat-card.ts';

/** A thermostat job whose card is done to the keys and that the customer said yes to. */
export async function finishedJob(
  test: TestApp,
  staff: Record<StaffName, string>,
  { registration = 'TQ40KES', ceiling = '500.00' }: { registration?: string; ceiling?: string } = {},
): Promise<string> {
  const { jobId } = await makeJob(test.db, { deskId: staff.desk, registration });
  await sayYes(test.db, { jobId, deskId: staff.desk, ceiling });
  const acknowledged = await test.app.get(JobCards).record(jobId, thermostatCard(actionsBy(staff.tech, jobId), { variant: 'NR-5488' }));
  expect(acknowledged.filter(({ difference }) => difference !== null)).toEqual([]);
  return jobId;
}

/** Presses the named button of a page, with these values typed. @returns where that leads. */
export async function press(
  agent: Agent,
  page: string,
  { form, to, values = {} }: { form: string; to: string; values?: Record<string, string | string[]> },
): Promise<string> {
  const { text } = await agent.get(page).expect(200);
  expect(text).toContain(`name="_form" value="${form}"`);
  const answer = await agent
    .post(to)
    .type('form')
    .send({ ...formMarks(text, form), ...values });
  expect(answer.status).toBe(303);
  return String(answer.headers['location']);
}

/** @returns the invoice's id. */
export async function issueInvoice(agent: Agent, jobId: string): Promise<string> {
  const place = await press(agent, `/till/jobs/${jobId}`, { form: 'issue', to: `/till/jobs/${jobId}/issue` });
  expect(place).toMatch(/^\/till\/invoices\//);
  return place.replace('/till/invoices/', '');
}
