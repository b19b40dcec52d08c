import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type DemoApp, openDemo } from '../support/demo.ts';
import { HOSTILE_BODIES, HOSTILE_IDS, HOSTILE_JSON, HOSTILE_TEXT, STRANGE_ADDRESSES } from '../support/hostile-values.ts';
import { exampleOf, type JsonRoute, jsonRoutes, leavesOf, type OpenApi, withLeaf } from '../support/json-routes.ts';
import { formsOf, type PageForm, unescapeHtml } from '../support/page-forms.ts';
import { addressOf, changesState, type DeclaredRoute, declaredRoutes, isApi, routeKey } from '../support/routes.ts';
import { type Agent, apiHeaders } from '../support/test-app.ts';
import { routeOf, type SeenPage, walkPages } from '../support/walk-pages.ts';

const TEXTS = Object.keys(HOSTILE_TEXT).length;

let test: DemoApp;
let owner: Agent;
let routes: DeclaredRoute[];
let pages: SeenPage[];
let forms: Map<string, PageForm>;

beforeAll(async () => {
  test = await openDemo();
  owner = await test.as('owner');
  routes = declaredRoutes(test.app);
  const rooms = ['/office', '/counter', '/bays', '/parts-bench', '/coolant-bench', '/returns-shelf', '/till'];
  // What a job's pages ask for depends on its stage.
  const jobs = await test.db.job.findMany({ distinct: ['stage'], select: { id: true } });
  pages = await walkPages([...rooms, ...jobs.flatMap(({ id }) => [`/counter/jobs/${id}`, `/bays/jobs/${id}/card`, `/till/jobs/${id}`])], {
    routes,
    most: 3,
    get: async (address) => {
      const { status, text } = await owner.get(address);
      return { status, html: text };
    },
  });
  forms = new Map();
  for (const { html, address } of pages) {
    for (const form of formsOf(html, address)) {
      const route = routeOf(routes, form.method.toUpperCase(), form.action);
      if (route) forms.set(`${routeKey(route)} ${form.name}`, forms.get(`${routeKey(route)} ${form.name}`) ?? form);
    }
  }
}, 120_000);
afterAll(() => test.close());

/** Rows of every table, and the sum of their versions: what a half-written change would show in. */
let counting: string | undefined;
async function written(): Promise<string> {
  if (counting === undefined) {
    const tables = await test.db.$queryRaw<{ name: string; versioned: boolean }[]>`
      select t.table_name::text as name, exists (select 1 from information_schema.columns c
        where c.table_schema = 'public' and c.table_name = t.table_name and c.column_name = 'version') as versioned
      from information_schema.tables t where table_schema = 'public' and table_type = 'BASE TABLE'
        and table_name not in ('session', 'sign_in_failure', 'kept_form', '_prisma_migrations') order by 1`;
    counting = tables
      .map(
        ({ name, versioned }) =>
          `select '${name}' as t, count(*)::text || ' ' || ${versioned ? 'coalesce(sum(version), 0)::text' : `''`} as n from "${name}"`,
      )
      .join(' union all ');
  }
  return JSON.stringify(await test.db.$queryRawUnsafe(counting));
}

interface Refusal {
  page: string;
  errors?: { field: string; message: string }[];
}

/** What the last form was refused for, as its page will show it. */
async function refusalLeft(): Promise<Refusal | undefined> {
  const session = await test.db.session.findFirst({ orderBy: { createdAt: 'desc' }, where: { staff: { name: 'owner' } } });
  const flash = session?.flash as Refusal | null | undefined;
  return flash?.errors ? flash : undefined;
}

type Typed = Record<string, string | string[]>;

async function fill(form: PageForm, typed: Typed) {
  const { values, action } = form;
  return owner
    .post(action)
    .type('form')
    .send({ ...values, ...typed, _key: randomUUID() });
}

let standing: string | undefined;
beforeEach(() => (standing = undefined));

/** Sends it and says what must never be: a failure of ours, or a refusal that wrote. */
async function complaint(form: PageForm, typed: Typed): Promise<string | undefined> {
  standing ??= await written();
  const { status } = await fill(form, typed);
  if (status >= 500) return `answered ${status}`;
  if (status < 400 && (await refusalLeft()) === undefined) {
    standing = undefined; // it was taken
    return undefined;
  }
  await test.db.session.updateMany({ data: { flash: {} } });
  const found = await written();
  const wrote = found !== standing;
  standing = found;
  return wrote ? `was refused with ${status} and wrote` : undefined;
}

/** Sent last: it ends the session. */
const isSpared = (key: string): boolean => key.includes('/sign-out');
const postForms = (): [string, PageForm][] => [...forms].filter(([key]) => key.startsWith('POST') && !isSpared(key));

describe('the pages', () => {
  it('were found by following links, and every one answers', () => {
    expect(pages.filter(({ status }) => status !== 200 && status !== 303).map(({ address, status }) => `${address}: ${status}`)).toEqual(
      [],
    );
    expect(pages.length).toBeGreaterThan(60);
  });

  it('carry these forms', () => {
    const keys = postForms().map(([key]) => key);
    expect(keys).toEqual(
      expect.arrayContaining([
        'POST /counter/customers/new customer',
        'POST /counter/vehicles/:/jobs/new complaint',
        'POST /counter/jobs/:/yes yes',
        'POST /counter/jobs/:/booking booking',
        'POST /office/workshop workshop',
      ]),
    );
    const reached = new Set(keys.map((key) => key.split(' ').slice(0, 2).join(' ')));
    const posts = routes.filter((route) => changesState(route) && !isApi(route)).map(routeKey);
    // Too few would mean that the walk no longer finds what it tries.
    expect(reached.size / posts.length).toBeGreaterThan(0.6);
  });
});

describe('a form', () => {
  it('says what to change beside the field, in words of the trade', async () => {
    const missing: string[] = [];
    let beside = 0;
    for (const [key, form] of postForms()) {
      for (const field of form.fields) {
        await test.db.session.updateMany({ data: { flash: {} } });
        await fill(form, { [field]: '\u0001<no>'.repeat(800) });
        const refusal = await refusalLeft();
        const errors = refusal?.errors?.filter((error) => error.field === field) ?? [];
        if (!refusal || errors.length === 0) continue;
        const { text } = await owner.get(refusal.page);
        // What was taken before may have led to a state that no longer asks for this.
        if (!formsOf(text, refusal.page).some(({ action, name }) => action === form.action && name === form.name)) continue;
        for (const { message } of errors) {
          const said = [...text.matchAll(/class="wrong"[^>]*>(?:<svg[^]*?<\/svg>)?(?:<span>)?([^<]*)</g)].map(([, words]) =>
            unescapeHtml(words ?? ''),
          );
          const isBeside = said.includes(message);
          // What nobody types (a list, a tick, a hidden mark) may be said above the form.
          if (!unescapeHtml(text).includes(message)) missing.push(`${key}: ${field}: “${message}” is said nowhere`);
          else if (form.typed.includes(field) && !isBeside) missing.push(`${key}: ${field}: “${message}” is not beside it`);
          if (/\bmust be\b|\bshould\b/.test(message)) missing.push(`${key}: ${field}: “${message}” is no word of the trade`);
          if (isBeside) beside += 1;
        }
      }
    }
    expect(missing).toEqual([]);
    expect(beside).toBeGreaterThan(40);
  }, 120_000);

  it('fails at no value, and writes nothing when it refuses one', async () => {
    const complaints: string[] = [];
    const values = Object.entries(HOSTILE_TEXT);
    for (const [formIndex, [key, form]] of postForms().entries()) {
      // In turn, some values in each field alone among good ones, and others in every field at once.
      const tries = form.fields.flatMap((field, index) =>
        values
          .filter((_, number) => number % 8 === (formIndex + index) % 8)
          .map(([what, value]) => ({ what: `${field} with ${what}`, typed: { [field]: value } })),
      );
      for (const [what, value] of values.filter((_, number) => number % 3 === formIndex % 3)) {
        tries.push({ what: `every field with ${what}`, typed: Object.fromEntries(form.fields.map((field) => [field, value])) });
      }
      for (const { what, typed } of tries) {
        const wrong = await complaint(form, typed);
        if (wrong !== undefined) complaints.push(`${key}: ${what} ${wrong}`);
      }
    }
    expect(complaints).toEqual([]);
  }, 240_000);

  it('fails at no shape: repeated, missing, unknown and prototype fields', async () => {
    const complaints: string[] = [];
    for (const [key, form] of postForms()) {
      const shapes: [string, Typed][] = [
        ['repeated fields', Object.fromEntries(form.fields.map((field) => [field, ['1', '2']]))],
        ['list fields', Object.fromEntries(form.fields.map((field) => [`${field}[]`, 'x']))],
        ['object fields', Object.fromEntries(form.fields.map((field) => [`${field}[a][b]`, 'x']))],
        ['an unknown field', { colour: 'green' }],
        [
          'prototype fields',
          { ['__proto__']: 'x', 'constructor[prototype][a]': 'x', constructor: 'x', toString: 'x', hasOwnProperty: 'x' },
        ],
        ['repeated marks', { _page: ['/bays', '/counter'], _form: ['a', 'b'] }],
      ];
      for (const [what, typed] of shapes) {
        const wrong = await complaint(form, typed);
        if (wrong !== undefined) complaints.push(`${key}: ${what} ${wrong}`);
      }
    }
    expect(complaints).toEqual([]);
  }, 120_000);

  it('takes nothing that is too large, or that is no form', async () => {
    const customer = forms.get('POST /counter/customers/new customer');
    const before = await written();
    const post = () => owner.post(customer?.action ?? '');
    expect(
      (
        await post()
          .type('form')
          .send({ ...customer?.values, note: 'x'.repeat(300_000) })
      ).status,
    ).toBe(413);
    for (const type of [
      'application/json',
      'text/plain',
      'application/xml',
      'multipart/form-data; boundary=x',
      'application/x-www-form-urlencoded; charset=utf-7',
      '',
    ]) {
      const { status } = await post().set('content-type', type).send('_csrf=1&name=%ff%fe%zz');
      expect([type, status < 500 && status >= 400]).toEqual([type, true]);
    }
    expect(await written()).toBe(before);
  });
});

describe('the API', () => {
  let calls: JsonRoute[];
  beforeAll(async () => {
    const description = await owner.get('/api/v1/openapi.json').expect(200);
    calls = jsonRoutes(description.body as OpenApi);
  });

  const call = ({ method, path }: JsonRoute, { body, type = 'application/json' }: { body: string; type?: string }) => {
    const address = path.replaceAll(/\{[^}]+\}/g, randomUUID());
    const asked = method === 'PUT' ? owner.put(address) : owner.post(address);
    return asked.set({ ...apiHeaders(), 'content-type': type, 'if-match': '"1"' }).send(body);
  };

  /** What must never be: a failure of ours, an error that is no problem document, a refusal that wrote. */
  async function wrongWith(route: JsonRoute, request: { body: string; type?: string }): Promise<string | undefined> {
    const before = route.isCalculation ? '' : await written();
    const answer = await call(route, request);
    const { status, headers } = answer;
    if (status >= 500) return `answered ${status}`;
    if (status < 400) return undefined;
    const problem = answer.body as { status?: unknown; title?: unknown };
    if (
      !/^application\/problem\+json/.test(headers['content-type'] ?? '') ||
      problem.status !== status ||
      typeof problem.title !== 'string'
    )
      return `answered ${status} without a problem document`;
    return !route.isCalculation && (await written()) !== before ? `was refused with ${status} and wrote` : undefined;
  }

  it('fails at no body', async () => {
    const wrong: string[] = [];
    const bodies = { ...HOSTILE_BODIES, '300 kB': JSON.stringify({ name: 'x'.repeat(300_000) }) };
    for (const route of calls) {
      for (const [what, body] of Object.entries(bodies)) {
        const found = await wrongWith(route, { body });
        if (found !== undefined) wrong.push(`${route.method} ${route.path} with ${what} ${found}`);
      }
      for (const type of ['text/plain', 'application/xml', 'application/x-www-form-urlencoded', 'multipart/form-data', 'nonsense']) {
        const found = await wrongWith(route, { body: '{}', type });
        if (found !== undefined) wrong.push(`${route.method} ${route.path} as ${type} ${found}`);
      }
    }
    expect(wrong).toEqual([]);
  }, 120_000);

  it('fails at no value in any place of a body', async () => {
    const wrong: string[] = [];
    let tried = 0;
    const before = await written();
    for (const route of calls) {
      const example = exampleOf(route);
      for (const [index, leaf] of leavesOf(example).entries()) {
        for (const value of HOSTILE_JSON.filter((_, number) => number >= TEXTS || number % 6 === index % 6)) {
          tried += 1;
          const found = await wrongWith(route, { body: JSON.stringify(withLeaf(example, leaf, value)) });
          if (found !== undefined)
            wrong.push(`${route.method} ${route.path}: ${leaf.join('.')} with ${JSON.stringify(value).slice(0, 40)} ${found}`);
        }
      }
    }
    expect(wrong).toEqual([]);
    expect(tried).toBeGreaterThan(1_000);
    // The calculations among them keep nothing of what they were asked.
    const keptRows = ['customer', 'idempotency_key', 'audit_entry', 'audit_personal'];
    const without = (rows: string) => (JSON.parse(rows) as { t: string }[]).filter(({ t }) => !keptRows.includes(t));
    expect(without(await written())).toEqual(without(before));
  }, 240_000);
});

describe('an address', () => {
  it('with no record behind it is not found, whatever stands in it', async () => {
    const wrong: string[] = [];
    for (const route of routes.filter(({ method, path }) => method === 'GET' && path.includes(':'))) {
      for (const id of HOSTILE_IDS) {
        const address = addressOf(route, id.startsWith('%') ? id : encodeURIComponent(id));
        const { status } = await owner.get(address);
        if (![400, 404, 414].includes(status)) wrong.push(`${address.slice(0, 80)}: ${status}`);
      }
    }
    expect(wrong).toEqual([]);
  }, 60_000);

  it.each(STRANGE_ADDRESSES)('that we do not have is said to be none: %s', async (address) => {
    const { status, text } = await owner.get(address);
    expect([400, 403, 404, 414]).toContain(status);
    expect(text).not.toMatch(/at .*\.ts:|node_modules/);
  });

  it('that we do not have is told in words of ours, on pages and to programs', async () => {
    const words = 'Nothing is at this address: check how it is written.';
    expect((await owner.get('/nowhere').expect(404)).text).toContain(words);
    expect((await owner.get('/api/v1/nowhere').expect(404)).body).toMatchObject({ type: '/problems/no-such-address', detail: words });
  });

  it('takes any query: repeated, nested, hostile', async () => {
    const wrong: string[] = [];
    for (const { address, route } of pages.filter(({ address }) => !address.includes('?'))) {
      const names = [...new Set([...route.queries, 'q', '__proto__', 'constructor'])];
      const queries = [
        names.map((name) => `${name}=a&${name}=b`).join('&'),
        names.map((name) => `${name}[]=a&${name}[x]=b`).join('&'),
        names.map((name) => `${name}=%00%ff'";--`).join('&'),
        names.map((name) => `${name}=${'x'.repeat(3_000)}`).join('&'),
        names.map((name) => `${name}`).join('&'),
        names.map((name) => `${name}=-1`).join('&'),
        names.map((name) => `${name}=1e309`).join('&'),
      ];
      for (const query of route.queries.length > 0 ? queries : queries.slice(0, 1)) {
        const { status } = await owner.get(`${address}?${query}`);
        if (status >= 500) wrong.push(`${address}?${query.slice(0, 80)}: ${status}`);
      }
    }
    expect(wrong).toEqual([]);
  }, 60_000);

  it('answers no method that it has not', async () => {
    for (const method of ['put', 'delete', 'patch', 'options'] as const) {
      expect((await owner[method]('/counter')).status).toBe(404);
    }
  });
});

describe('any text at all', () => {
  const text = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 400 }),
    fc.string({ unit: 'grapheme' }),
    fc.constantFrom(...Object.values(HOSTILE_TEXT)),
  );

  it.each([
    'POST /counter/customers/new customer',
    'POST /counter/vehicles/:/jobs/new complaint',
    'POST /counter/jobs/:/yes yes',
    'POST /office/workshop workshop',
  ])(
    'is taken whole or refused whole by %s',
    async (key) => {
      const form = forms.get(key);
      if (!form) throw new Error(`The pages have no form ${key}`);
      await fc.assert(
        fc.asyncProperty(fc.dictionary(fc.constantFrom(...form.fields), text), async (typed) => {
          expect(await complaint(form, typed)).toBeUndefined();
        }),
        { numRuns: 40 },
      );
    },
    120_000,
  );
});
