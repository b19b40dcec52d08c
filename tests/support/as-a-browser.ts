import { expect } from '@jest/globals';
import { type Agent, formMarks } from './test-app.ts';

/** As a browser would: the page first, then its form. @returns where it leads. */
export async function post(
  agent: Agent,
  address: string,
  { on, form, body = {} }: { on: string; form: string; body?: Record<string, string | string[]> },
): Promise<string> {
  const { text } = await agent.get(on).expect(200);
  const answer = await agent
    .post(address)
    .type('form')
    .send({ ...formMarks(text), _page: on, _form: form, ...body });
  expect(answer.status).toBe(303);
  return String(answer.headers['location']);
}

/** The page, with the marks that keep markup safe as they are read. */
export async function page(agent: Agent, address: string): Promise<string> {
  const { text } = await agent.get(address).expect(200);
  return text
    .replaceAll('&#x27;', "'")
    .replaceAll('&#x3D;', '=')
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll(/\s+/g, ' ');
}
