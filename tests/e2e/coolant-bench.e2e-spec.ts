import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { type Agent, openTestApp, type TestApp } from '../support/test-app.ts';

let test: TestApp;
let tech: Agent;
beforeAll(async () => {
  test = await openTestApp();
  await test.furnish();
  tech = await test.as('tech');
});
afterAll(() => test.close());

/** The page as a browser without script gets it after the button. */
async function reckon(tool: string, typed: Record<string, string>): Promise<string> {
  const query = new URLSearchParams(typed).toString();
  const { text } = await tech.get(`/coolant-bench${tool}?${query}`).expect(200);
  return text;
}

const SATURDAY = {
  holds: '7',
  out: '3',
  missing: '1',
  stays: 'reading',
  staysReading: '-18',
  product: 'mass',
  content: '93',
  aim: 'freezing',
  aimFreezes: '-30',
  jug: '2',
  mark: '50',
};

describe('the refill', () => {
  it('counts what stays and what was missing', async () => {
    const page = await reckon('', SATURDAY);
    expect(page).toContain('Holds from');
    console.log(/role="status" data-live="status">([^<]*)/.exec(page)?.[1]);
    console.log(/<ol class="pouring">([\s\S]*?)<\/ol>/.exec(page)?.[1]);
  });
});
