import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import request from 'supertest';
import type { OpenApi } from '../support/json-routes.ts';
import { declaredRoutes, isApi, routeKey } from '../support/routes.ts';
import { type Agent, openTestApp, SECRET, type TestApp } from '../support/test-app.ts';

let test: TestApp;
let description: OpenApi;
beforeAll(async () => {
  test = await openTestApp();
  description = (await request(test.http).get('/api/v1/openapi.json').expect(200)).body as OpenApi;
});
beforeEach(() => test.furnish());
afterAll(() => test.close());

const operations = () =>
  Object.entries(description.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({
      key: routeKey({ method: method.toUpperCase(), path: path.replaceAll(/\{([^}]+)\}/g, ':$1') }),
      operation,
    })),
  );

/** Every object with its way there, down to the leaves. */
function* parts(value: unknown, way = ''): Generator<{ way: string; part: Record<string, unknown> }> {
  if (typeof value !== 'object' || value === null) return;
  yield { way, part: value as Record<string, unknown> };
  for (const [name, inner] of Object.entries(value)) yield* parts(inner, `${way}/${name}`);
}

describe('the description of the API', () => {
  it('is OpenAPI 3.1, served to whoever writes against it', () => {
    expect(description.openapi).toMatch(/^3\.1\.\d$/);
  });

  it('describes every route of the API and no page', () => {
    const registered = declaredRoutes(test.app).filter(isApi).map(routeKey);
    expect(registered).toContain('POST /api/v1/vehicles/vin-check');
    expect(
      operations()
        .map(({ key }) => key)
        .sort(),
    ).toEqual(registered.sort());
  });

  it('names the calls that other programs rely on', () => {
    const names = ['protection', 'strength', 'recipe', 'replacement', 'flush', 'boiling', 'expansion', 'refractometer'].map(
      (name) => `coolant/${name}`,
    );
    names.push(
      'fitment/conformance',
      'fitment/comparison',
      'fitment/order-plan',
      'warm-up/analyses',
      'vehicles/vin-check',
      'invoices/totals',
      'session',
    );
    expect(Object.keys(description.paths)).toEqual(
      expect.arrayContaining([
        ...names.map((name) => `/api/v1/${name}`),
        '/api/v1/health',
        '/api/v1/invoices/{id}/document.pdf',
        '/api/v1/invoices/{id}/ubl.xml',
      ]),
    );
  });

  it('says of every call what it does', () => {
    expect(
      operations()
        .filter(({ operation }) => !operation.summary && !operation.description)
        .map(({ key }) => key),
    ).toEqual([]);
  });

  it('refers to nothing that it does not hold', () => {
    const references = [...parts(description)].flatMap(({ part }) => (typeof part['$ref'] === 'string' ? [part['$ref']] : []));
    expect(references.length).toBeGreaterThan(20);
    const held = Object.keys(description.components.schemas).map((name) => `#/components/schemas/${name}`);
    expect(references.filter((reference) => !held.includes(reference))).toEqual([]);
  });

  it('gives every body that is asked for its properties, with their kinds', () => {
    const asked = operations().flatMap(
      ({ operation }) => operation.requestBody?.content['application/json']?.schema.$ref?.split('/').at(-1) ?? [],
    );
    expect(asked).toContain('VinCheckDto');
    const bare = asked.filter((name) => Object.keys(description.components.schemas[name]?.properties ?? {}).length === 0);
    expect(bare).toEqual([]);
  });

  it('calls a text a text: a property with a pattern or a length is no object', () => {
    const wrong = [...parts(description.components.schemas)]
      .filter(({ part }) => part['type'] === 'object' && ['pattern', 'maxLength', 'minLength', 'format'].some((name) => name in part))
      .map(({ way }) => way);
    expect(wrong).toEqual([]);
  });

  it('asks for nothing that has a value when it is left out', () => {
    const withDefault = [...parts(description.components.schemas)].filter(({ part }) => 'default' in part).map(({ way }) => way.split('/'));
    expect(withDefault.length).toBeGreaterThan(0);
    const asked = withDefault.filter(([, schema = '', , name = '']) => description.components.schemas[schema]?.required?.includes(name));
    expect(asked).toEqual([]);
  });

  it('says in words what the quantities of a body are', () => {
    const bare = Object.entries(description.components.schemas).flatMap(([schema, { properties = {} }]) =>
      Object.entries(properties)
        .filter(([, property]) => property.type === 'number' && !property.description)
        .map(([name]) => `${schema}.${name}`),
    );
    expect(bare).toEqual([]);
  });
});

describe('health', () => {
  it('is told to anyone once the database answers', async () => {
    const answer = await request(test.http).get('/api/v1/health').expect(200).expect('content-type', /json/);
    expect(answer.body).toEqual({ status: 'ok' });
  });
});

describe('the session', () => {
  const signIn = (body: object) => request(test.http).post('/api/v1/session').send(body);

  it('opens with a name and its secret, and says the role', async () => {
    expect((await signIn({ name: 'tech', secret: SECRET }).expect(200)).body).toEqual({ role: 'technician' });
    expect((await signIn({ name: 'TECH', secret: SECRET }).expect(200)).body).toEqual({ role: 'technician' });
  });

  it('does not open with a wrong one, in a problem document', async () => {
    const answer = await signIn({ name: 'tech', secret: 'wrong' })
      .expect(401)
      .expect('content-type', /^application\/problem\+json/);
    expect(answer.body).toMatchObject({ status: 401, title: 'Sign in first', type: '/problems/wrong-secret' });
  });

  it('says which field is missing', async () => {
    const answer = await signIn({ name: 'tech' }).expect(400);
    expect(answer.body).toMatchObject({ errors: [{ field: 'secret', message: expect.stringMatching(/^Type your secret/) as unknown }] });
  });
});

describe('the check of a VIN', () => {
  let tech: Agent;
  beforeEach(async () => {
    tech = await test.as('tech');
  });
  // Without a key or a mark of our pages: it changes nothing.
  const check = (vin: unknown) => tech.post('/api/v1/vehicles/vin-check').send({ vin });

  it.each([
    // 49 CFR 565.15(c), the regulation's own example (read); sum 411, 411 mod 11 = 4.
    ['1G4AH59H45G118341', '4', [2005]],
    // Widely printed examples (from memory, recomputed): sums 351 and 89, mod 11 = 10 (written X) and 1.
    ['1M8GDM9AXKP042788', 'X', [1989]],
    ['11111111111111111', '1', [2001]],
  ])('finds %s whole, with the check digit %s', async (vin, digit, modelYears) => {
    const answer = await check(vin).expect(200);
    expect(answer.body).toMatchObject({
      wellFormed: true,
      problems: [],
      checkDigit: { expected: digit, found: digit, matches: true, binding: true },
      modelYears,
    });
  });

  it('names one mistyped sign', async () => {
    const answer = await check('1G4AH59H55G118341').expect(200);
    expect(answer.body).toMatchObject({ wellFormed: true, checkDigit: { expected: '4', found: '5', matches: false, binding: true } });
    expect((answer.body as { problems: string[] }).problems).toHaveLength(1);
  });

  it('asks for no check digit in Europe, where ISO 3779 asks for none', async () => {
    const answer = await check('WXXZZZ00ZA0000001').expect(200);
    expect(answer.body).toMatchObject({ wellFormed: true, problems: [], checkDigit: { binding: false } });
  });

  it('says what is wrong with what is no VIN, and refuses what is no text', async () => {
    const answer = await check('IOQ').expect(200);
    expect(answer.body).toMatchObject({ wellFormed: false });
    await check(17).expect(400);
    await check('1'.repeat(101)).expect(400);
    await request(test.http).post('/api/v1/vehicles/vin-check').send({ vin: '11111111111111111' }).expect(401);
  });
});
