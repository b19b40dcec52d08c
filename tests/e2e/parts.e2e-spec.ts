import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type request from 'supertest';
import { type Agent, openTestApp, type TestApp } from '../support/test-app.ts';

let test: TestApp;
let tech: Agent;
beforeAll(async () => {
  test = await openTestApp();
});
beforeEach(async () => {
  await test.furnish();
  tech = await test.as('tech');
});
afterAll(() => test.close());

const ask = (call: string, body: object | string): request.Test =>
  tech.post(`/api/v1/fitment/${call}`).set('x-requested-with', 'fetch').type('json').send(body);

const answerOf = async (call: string, body: object): Promise<unknown> => (await ask(call, body).expect(200)).body as unknown;

const flange = { key: 'flange', kind: 'number', criticality: 'function', tolerance: 0.3 };
const pair = (priors: readonly (number | undefined)[] = [undefined, undefined]) =>
  [53, 54].map((figure, index) => ({ id: 'AB'.charAt(index), prior: priors[index], values: { flange: figure } }));
const plan = (delayCost: number) => ({
  candidates: [0.7, 0.2, 0.1].map((probability, index) => ({ id: 'ABC'.charAt(index), probability, price: 30, restockingPercent: 15 })),
  carriage: 6,
  returnCarriage: 8,
  delayCost,
});

describe('the calls of the parts bench', () => {
  // Guard band of 1.645 u: ISO 14253-1 (from memory); the figures are computed
  it.each([
    [10.03, 'not-proven', 0.841],
    [10.017, 'conforms', 0.95],
    [10.05, 'not-proven', 0.5],
    [10.1, 'does-not-conform', 0.006],
  ])('judges 10.00 ± 0.05 read as %d with u 0.02', async (measured, verdict, probability) => {
    const body = await answerOf('conformance', {
      nominal: 10,
      tolerance: 0.05,
      measured,
      standardUncertainty: 0.02,
    });
    const answer = body as { verdict: string; conformanceProbability: number; acceptance: { low: number; high: number } };
    expect(answer.verdict).toBe(verdict);
    expect(answer.conformanceProbability).toBeCloseTo(probability, 2);
    expect(answer.acceptance.low).toBeCloseTo(9.983, 3);
    expect(answer.acceptance.high).toBeCloseTo(10.017, 3);
  });

  it('says that an instrument is too coarse to prove anything', async () => {
    const body = await answerOf('conformance', {
      nominal: 10,
      tolerance: 0.05,
      measured: 10,
      standardUncertainty: 0.5,
    });
    expect(body).toMatchObject({ verdict: 'not-proven', acceptance: null });
  });

  // Likelihood N(y; nominal, tolerance²/3 + u²); the figures are computed
  it.each([
    ['equal priors', undefined, 0.924],
    ['priors 0.2 and 0.8', [0.2, 0.8], 0.753],
  ])('ranks a flange of 53.4 between 53 and 54, %s', async (_what, priors, expected) => {
    const readings = [{ key: 'flange', value: 53.4, standardUncertainty: 0.1 }];
    const body = await answerOf('comparison', {
      features: [flange],
      nonePrior: 0,
      candidates: pair(priors),
      readings,
    });
    const [first] = (body as { ranking: { id: string; probability: number }[] }).ranking;
    expect(first?.id).toBe('A');
    expect(first?.probability).toBeCloseTo(expected, 3);
  });

  it('answers that nothing fits and that two numbers are the same part', async () => {
    const sealing = { ...flange, criticality: 'sealing' };
    const far = await answerOf('comparison', {
      features: [sealing],
      candidates: pair(),
      readings: [{ key: 'flange', value: 51, standardUncertainty: 0.025 }],
    });
    expect(far).toMatchObject({ noneProbability: 1, settled: false });
    expect((far as { ranking: { verdict: string }[] }).ranking.map(({ verdict }) => verdict)).toEqual(['excluded', 'excluded']);
    const twins = ['A', 'B'].map((id) => ({ id, values: { flange: 54 } }));
    const same = await answerOf('comparison', { features: [sealing], candidates: twins, readings: [{ key: 'flange', value: null }] });
    expect(same).toMatchObject({ sameAs: [['A', 'B']] });
  });

  // Decision tree of three variants, walked through outcome by outcome (computed)
  it.each([
    [10, ['A'], 17.4],
    [20, ['A'], 21.3],
    [45, ['A', 'B', 'C'], 23],
  ])('plans the order at a delay cost of %d', async (delayCost, order, expectedCost) => {
    const body = await answerOf('order-plan', plan(delayCost));
    const answer = body as {
      best: { order: string[]; expectedCost: number };
      flips: { delayCost: number }[];
      perfectInformationValue: number;
    };
    expect(answer.best.order).toEqual(order);
    expect(answer.best.expectedCost).toBeCloseTo(expectedCost, 9);
    expect(answer.flips.map((flip) => Number(flip.delayCost.toFixed(6)))).toEqual([21.25, 34.5]);
    if (delayCost === 45) expect(answer.perfectInformationValue).toBeCloseTo(17, 9);
  });

  const good = { features: [flange], candidates: pair(), readings: [] };
  it.each([
    ['conformance', 400, {}],
    ['conformance', 400, { nominal: '10', tolerance: 1, measured: 1, standardUncertainty: 0 }],
    ['conformance', 400, { nominal: 10, tolerance: -1, measured: 1, standardUncertainty: 0 }],
    ['conformance', 400, '{"nominal":1e999,"tolerance":1,"measured":1,"standardUncertainty":0}'],
    ['conformance', 400, '[]'],
    ['conformance', 400, '{'],
    ['comparison', 400, { ...good, candidates: [] }],
    ['comparison', 400, { ...good, candidates: [null] }],
    ['comparison', 400, { ...good, candidates: ['A'] }],
    ['comparison', 400, { ...good, candidates: [{ id: 'A', values: [] }] }],
    ['comparison', 400, { ...good, candidates: [{ id: 'A', values: { flange: 'wide' } }] }],
    ['comparison', 400, { ...good, readings: [{ key: 'flange' }] }],
    ['comparison', 400, { ...good, readings: [{ key: 'colour', value: 'red' }] }],
    ['comparison', 400, { ...good, features: [{ ...flange, tolerance: -1 }] }],
    ['comparison', 400, { ...good, nonePrior: 1 }],
    ['comparison', 422, { ...good, features: [{ ...flange, low: 30, high: 100 }], readings: [{ key: 'flange', value: 500 }] }],
    ['order-plan', 400, { ...plan(10), candidates: [] }],
    ['order-plan', 400, { ...plan(10), delayCost: -1 }],
    ['order-plan', 400, { ...plan(10), recourse: 'lucky' }],
    ['order-plan', 422, { ...plan(10), candidates: plan(10).candidates.map((one) => ({ ...one, probability: 0.6 })) }],
  ])('refuses what %s can’t take with %d: %j', async (call, status, body) => {
    const answer = await ask(call, body);
    expect(answer.status).toBe(status);
    expect(answer.headers['content-type']).toMatch(/problem\+json/);
    const { errors, detail } = answer.body as { errors?: { field: string; message: string }[]; detail: string };
    expect(errors?.every(({ message }) => message.length > 5) ?? detail.length > 5).toBe(true);
  });
});
