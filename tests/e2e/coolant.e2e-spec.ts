import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import request from 'supertest';
import { type Agent, openTestApp, type TestApp } from '../support/test-app.ts';

let test: TestApp;
let tech: Agent;
beforeAll(async () => {
  test = await openTestApp();
  await test.furnish();
  tech = await test.as('tech');
});
afterAll(() => test.close());

const ask = (call: string, body: object) => tech.post(`/api/v1/coolant/${call}`).set('x-requested-with', 'fetch').send(body);

describe('the calls of the coolant bench', () => {
  // ASHRAE Handbook, Fundamentals 2001: 50 mass % of ethylene glycol is 47.6 volume % and freezes at -33.8 °C (read)
  it('tells protection and strength', async () => {
    const protection = await ask('protection', { glycol: 'ethylene', massPercent: 50 }).expect(200);
    expect(protection.body).toMatchObject({ volumePercent: 47.6, massPercent: 50, freezingPointC: -33.8 });
    const inverse = await ask('strength', { glycol: 'ethylene', freezingPointC: -33.8 }).expect(200);
    expect((inverse.body as { massPercent: number }).massPercent).toBeCloseTo(50, 6);
  });

  it('counts what stays in the block', async () => {
    const input = {
      glycol: 'ethylene',
      systemVolumeL: 7,
      drainedVolumeL: 4,
      residual: { volumePercent: 33 },
      additive: { volumePercent: 100 },
      target: { volumePercent: 45 },
      jugL: 2,
    };
    const answer = await ask('recipe', input).expect(200);
    const recipe = answer.body as {
      additiveL: number;
      waterL: number;
      additiveByPlainVolumesL: number;
      jugs: { additiveMl: number; waterMl: number }[];
    };
    expect(recipe.additiveByPlainVolumesL).toBeCloseTo(2.16, 2);
    const poured = recipe.jugs.reduce((sum, jug) => sum + jug.additiveMl + jug.waterMl, 0) / 1000;
    expect(poured).toBeCloseTo(recipe.additiveL + recipe.waterL, 6);
  });

  it('says how much must come out', async () => {
    const input = {
      glycol: 'ethylene',
      systemVolumeL: 7,
      drainedVolumeL: 0.5,
      residual: { volumePercent: 20 },
      additive: { volumePercent: 100 },
      target: { volumePercent: 45 },
    };
    const refusal = await ask('recipe', input)
      .expect(422)
      .expect('content-type', /problem\+json/);
    const problem = refusal.body as { type: string; requiredDrainL: number };
    expect(problem.type).toBe('/problems/drain-more');
    await ask('recipe', { ...input, drainedVolumeL: problem.requiredDrainL + 0.001 }).expect(200);
  });

  it('asks for the residual of a part drain', async () => {
    const input = {
      glycol: 'ethylene',
      systemVolumeL: 7,
      drainedVolumeL: 3,
      additive: { volumePercent: 100 },
      target: { volumePercent: 45 },
    };
    await ask('recipe', input).expect(400);
  });

  it('answers the other calls', async () => {
    expect(
      (await ask('replacement', { systemVolume: 3.6, presentPercent: 60, addedPercent: 0, targetPercent: 50 }).expect(200)).body,
    ).toMatchObject({ drainVolume: expect.closeTo(0.6, 9) as unknown as number });
    expect((await ask('flush', { systemVolumeL: 8, drainedVolumeL: 4, cycles: 3 }).expect(200)).body).toMatchObject({
      remainingFraction: 0.125,
      cycles: 3,
    });
    expect((await ask('boiling', { glycol: 'ethylene', volumePercent: 50, capGaugeKPa: 103.4 }).expect(200)).body).toMatchObject({
      boilingPointC: expect.closeTo(129.4, -0.7) as unknown as number,
    });
    await ask('expansion', { glycol: 'ethylene', volumePercent: 50, volumeL: 7, fromC: 20, toC: 90 }).expect(200);
    await ask('refractometer', { glycol: 'propylene', scaleGlycol: 'ethylene', freezingPointC: -20 }).expect(200);
    await ask('hydrometer', { glycol: 'ethylene', specificGravity: 1.06 }).expect(200);
    await ask('heat-carrying', { glycol: 'ethylene', volumePercent: 50 }).expect(200);
    await ask('recipe-after-flush', {
      glycol: 'ethylene',
      systemVolumeL: 7,
      drainedVolumeL: 4,
      cycles: 3,
      additive: { volumePercent: 100 },
      target: { volumePercent: 40 },
    }).expect(200);
  });

  it.each([
    ['a word for a number', { glycol: 'ethylene', volumePercent: 'half' }],
    ['nothing', {}],
    ['two strengths', { glycol: 'ethylene', volumePercent: 50, massPercent: 50 }],
    ['another fluid', { glycol: 'brine', volumePercent: 50 }],
    ['more than all', { glycol: 'ethylene', volumePercent: 101 }],
    ['a field nobody knows', { glycol: 'ethylene', volumePercent: 50, colour: 'pink' }],
  ])('refuses %s', async (_what, body) => {
    const answer = await ask('protection', body);
    expect(answer.status).toBe(400);
    expect(answer.body).toMatchObject({ errors: [{ message: expect.any(String) as unknown as string }] });
  });

  it('is open to staff only', async () => {
    await request(test.http).post('/api/v1/coolant/protection').send({ glycol: 'ethylene', volumePercent: 50 }).expect(401);
  });
});
