import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { makeJob } from '../support/factories.ts';
import { CardUnderTest, tap } from '../support/job-card.ts';
import { type Agent, formMarks, openTestApp, type StaffName, type TestApp } from '../support/test-app.ts';

let test: TestApp;
let staff: Record<StaffName, string>;
let tech: Agent;
beforeAll(async () => {
  test = await openTestApp();
});
beforeEach(async () => {
  test.clock.set('2026-06-09T08:00:00Z');
  staff = await test.furnish();
  tech = await test.as('tech');
});
afterAll(() => test.close());

/** A page as a browser without script gets it after the button. */
async function reckon(page: string, typed: Record<string, string> = {}): Promise<string> {
  const query = new URLSearchParams(typed).toString();
  const { text } = await tech.get(`/coolant-bench${page}${query === '' ? '' : `?${query}`}`).expect(200);
  return text.replaceAll('&#x27;', "'").replaceAll('&#x3D;', '=');
}

const answerOf = (page: string): string => /role="status" data-live="status">([^<]*)/.exec(page)?.[1] ?? '';
const saidBeside = (page: string, field: string): string => new RegExp(`id="${field}-said">([\\s\\S]*?)</div>`).exec(page)?.[1] ?? '';
const valueOf = (page: string, field: string): string =>
  new RegExp(`id="${field}" name="${field}"[^>]*? value="([^"]*)"`).exec(page)?.[1] ?? '';

const SATURDAY = {
  holds: '7',
  missing: '1',
  out: '3',
  stays: 'reading',
  staysReading: '-18',
  product: 'mass',
  content: '93',
  aim: 'freezing',
  aimFreezes: '-30',
  jug: '2',
  mark: '50',
};

describe('the Saturday job: a part drain, one litre missing', () => {
  it('says what to pour, in which order, and what truly comes of it', async () => {
    const page = await reckon('', SATURDAY);
    expect(answerOf(page)).toBe('Pour 2.35 L of product and 1.7 L of demineralised water. Holds from −30 to 106 °C.');
    expect(page).toMatch(/<li>First 2\.35 L of product\.<\/li><li>Then 1\.7 L of demineralised water\.<\/li>/);
    expect(page).toContain('exactly 2.332 L');
  });

  it('reckons the same as the API', async () => {
    const answer = await tech
      .post('/api/v1/coolant/recipe')
      .set('x-requested-with', 'fetch')
      .send({
        glycol: 'ethylene',
        systemVolumeL: 7,
        drainedVolumeL: 4,
        residual: { freezingPointC: -18 },
        additive: { massPercent: 93 },
        target: { freezingPointC: -30 },
        jugL: 2,
        markMl: 50,
      })
      .expect(200);
    const recipe = answer.body as { additiveL: number; roundedJugs: { additiveL: number; waterL: number; resultFreezingPointC: number } };
    expect(recipe.additiveL).toBeCloseTo(2.332, 3);
    expect(recipe.roundedJugs).toMatchObject({ additiveL: 2.35, waterL: 1.7 });
    expect(recipe.roundedJugs.resultFreezingPointC).toBeLessThan(-30);
  });

  // By plain volumes 7 L at 44.7 % less 4 L at 32.7 % are 1.97 L of a product that holds 92.3 %; the shrink adds to it (by hand)
  it('counts what was missing: without it less goes in', async () => {
    expect(answerOf(await reckon('', { ...SATURDAY, missing: '0' }))).toBe(
      'Pour 2 L of product and 1.05 L of demineralised water. Holds from −30 to 106 °C.',
    );
  });

  it('says how much must come out where the target is out of reach, and offers to reckon with it', async () => {
    const page = await reckon('', { ...SATURDAY, out: '0.2', missing: '0' });
    expect(page).toContain('Not with these figures.');
    const [, href = '', litres] = /<a class="button" href="([^"]*)">Reckon with ([\d.]+) L out/.exec(page) ?? [];
    expect(Number(litres)).toBeGreaterThan(0.2);
    const { text } = await tech.get(href.replaceAll('&amp;', '&')).expect(200);
    expect(answerOf(text)).toMatch(/^Pour /);
  });

  it('reads a propylene mixture on an ethylene scale for what it is', async () => {
    const right = await reckon('', { ...SATURDAY, glycol: 'propylene' });
    const wrong = await reckon('', { ...SATURDAY, glycol: 'propylene', scale: 'ethylene' });
    expect(wrong).toContain('Wrong scale');
    expect(answerOf(wrong)).not.toBe(answerOf(right));
  });

  it('shows the assumed broken, says what is unknown and what it does about it', async () => {
    const page = await reckon('', { holds: '7' });
    expect(answerOf(page)).toMatch(/^Pour [\d.]+ L of concentrate and [\d.]+ L of demineralised water/);
    expect(page).toContain('93 % by mass, a pessimistic figure');
    expect(page).toMatch(/class="field assumed"[\s\S]{0,200}id="coldest"/);
    expect(page).toContain('The cap is not known');
    expect(page).toContain('<li>Jug 1: concentrate up to');
  });
});

describe('the flush', () => {
  const FLUSH = { holds: '7', out: '4', present: '45', left: '5', product: 'mass', content: '93', aim: 'glycol', aimGlycol: '40' };

  // 1 − 4/7 to the fourth is 0.0337: three times would leave 7.9 % (computed by hand)
  it('says how often, and gives the last filling more for the water left in the block', async () => {
    const page = await reckon('/flush', FLUSH);
    expect(answerOf(page)).toBe('Flush 4 times, then pour 3 L of product and 1.05 L of demineralised water.');
    expect(page).toContain('1.5 % of glycol by volume; it dilutes the filling');
  });

  it('refuses what more draining alone could mend', async () => {
    const page = await reckon('/flush', { ...FLUSH, out: '1', aimGlycol: '45' });
    expect(page).toContain('Not with these figures.');
  });
});

describe('the other calculators', () => {
  it.each([
    ['/strength', { by: 'mass', mass: '50' }, 'Safe to −33 °C.'], // ASHRAE 2001: 50 mass % freezes at −33.8 °C (read)
    ['/boiling', { percent: '50', cap: '103.4', altitude: '0' }, 'Boils at 129 °C.'], // label value 265 °F, 129.4 °C (read)
    ['/expansion', { percent: '50', holds: '7', from: '20', to: '90', space: '0.1' }, 'Grows by 0.32 L. The tank is too small.'],
    ['/refractometer', { shows: '-20', scale: 'ethylene' }, 'Safe to −20 °C.'],
    ['/hydrometer', { gravity: '1.068' }, /^Safe to −3\d °C, the weakest that the float leaves open\.$/],
    ['/heat', { percent: '50' }, 'Carries 89 % of what water carries.'],
    ['/part-change', { holds: '3.6', present: '60', wanted: '50' }, 'Drain 0.6 L and pour as much.'], // textbook mixing problem (read)
    ['/technology', { present: 'organic', added: 'organic', approved: 'yes' }, 'OAT approved by the vehicle maker.'],
    ['/water', { kind: 'other', chlorideMgL: '80' }, /^Chloride 80\.0 mg\/L \(at most 40\): do not mix with this water/],
  ])('%s answers', async (page, typed, answer) => {
    expect(answerOf(await reckon(page, typed))).toEqual(answer instanceof RegExp ? expect.stringMatching(answer) : answer);
  });

  it('knows no other', async () => {
    await tech.get('/coolant-bench/perpetuum-mobile').expect(404);
  });
});

describe('bad input', () => {
  const PAGES = [
    '',
    '/flush',
    '/strength',
    '/boiling',
    '/expansion',
    '/refractometer',
    '/hydrometer',
    '/heat',
    '/part-change',
    '/technology',
    '/water',
  ];
  const BAD = ['x'.repeat(3000), 'half', '-9999999', '9999999', 'NaN', '1e5', '1,2,3', '<b>', '\u0000', '٣'];

  it.each(PAGES)('is told beside its field, never a fault of ours: %s', async (page) => {
    const fresh = await reckon(page);
    const form = fresh.slice(fresh.indexOf('data-answers'), fresh.indexOf('Reckon</button>'));
    const fields = [...form.matchAll(/<input id="(\w+)" name="\w+" type="text"/g)].map(([, name]) => String(name));
    expect(fields.length).toBeGreaterThan(0);
    for (const field of fields) {
      for (const value of BAD) {
        const answered = await reckon(page, { [field]: value });
        const isEmpty = value === '\u0000';
        expect([field, value.slice(0, 20), saidBeside(answered, field).includes('class="wrong"')]).toEqual([
          field,
          value.slice(0, 20),
          !isEmpty,
        ]);
      }
    }
  });

  it('keeps the value that stood, and says so', async () => {
    const good = await reckon('', { ...SATURDAY, cap: '110' });
    const was = /name="was" value="([^"]*)"/.exec(good)?.[1] ?? '';
    const bad = await reckon('', { ...SATURDAY, cap: '1100', was });
    expect(saidBeside(bad, 'cap')).toContain('A cap holds 0 to 300 kPa. 110 kPa stays in force.');
    expect(valueOf(bad, 'cap')).toBe('1100');
    expect(answerOf(bad)).toBe(answerOf(good));
    const never = await reckon('', { ...SATURDAY, holds: 'seven' });
    expect(saidBeside(never, 'holds')).toContain('Nothing is reckoned until then.');
    expect(answerOf(never)).toBe('Still to be said: System holds.');
    // An empty field stands for a dry system: a mistyped one must not.
    const mistyped = await reckon('', { ...SATURDAY, out: 'three' });
    expect(answerOf(mistyped)).toBe('Still to be said: Measured out.');
    expect(saidBeside(await reckon('', { ...SATURDAY, cap: 'x' }), 'cap')).toContain('It is left out until then.');
  });

  it.each([
    'holds=7&holds=8',
    'holds[]=7',
    'holds[a]=b',
    '__proto__=1',
    'was=holds:1;;:;x:y',
    'in=K-gal-bar&holds=7',
    'glycol=brine',
    'stays=',
  ])('takes %s without a fault', async (query) => {
    await tech.get(`/coolant-bench?${query}`).expect(200);
  });

  it('lets nobody in who is not staff', async () => {
    const stranger = (await import('supertest')).default(test.http);
    await stranger.get('/coolant-bench').expect(303);
  });
});

describe('units of a person', () => {
  const US = { temperature: 'F', volume: 'qt', pressure: 'psi' };

  async function choose(units: object, back = '/coolant-bench'): Promise<string> {
    const { text } = await tech.get('/coolant-bench').expect(200);
    const answer = await tech
      .post('/coolant-bench/units')
      .type('form')
      .send({ ...formMarks(text, 'units'), ...units, back });
    expect(answer.status).toBe(303);
    return String(answer.headers['location']);
  }

  it('are kept with the person and show and take figures exactly', async () => {
    const metric = answerOf(await reckon('', SATURDAY));
    expect(await choose(US, '/coolant-bench?holds=7')).toBe('/coolant-bench?holds=7');
    const { units } = await test.db.staff.findUniqueOrThrow({ where: { id: staff.tech } });
    expect(units).toEqual(US);
    // 7 L = 7.396822646 US qt, 3 L = 3.170066848, 1 L = 1.056688209; −18 °C = −0.4 °F, −30 °C = −22 °F
    const typed = { ...SATURDAY, holds: '7.396823', out: '3.170067', missing: '1.056688', staysReading: '-0.4', aimFreezes: '-22' };
    const page = await reckon('', { ...typed, jug: '2.113376', mark: '0.052834' });
    expect(answerOf(page)).toBe('Pour 2.48 US qt of product and 1.8 US qt of demineralised water. Holds from −22 to 223 °F.');
    expect(metric).toContain('Pour 2.35 L');
    // The drawings are ruled in °C and mL, with the person's own figures beside them; sources are quoted as they are.
    const words = page.replaceAll(/<svg[\s\S]*?<\/svg>|<details class="as-table">[\s\S]*?<\/details>/g, '');
    expect(words).not.toMatch(/\d (L|°C|kPa)[ .,<]/);
  });

  it('turn the figures of a link that a colleague typed in others', async () => {
    await choose(US);
    const page = await reckon('', { ...SATURDAY, in: 'C-L-kPa' });
    expect(Number(valueOf(page, 'holds'))).toBeCloseTo(7.3968, 3);
    expect(answerOf(page)).toBe('Pour 2.48 US qt of product and 1.8 US qt of demineralised water. Holds from −22 to 223 °F.');
  });

  it('are refused where nobody knows them, and lead nowhere else', async () => {
    expect(await choose({ ...US, temperature: 'K' })).toBe('/coolant-bench');
    expect((await test.db.staff.findUniqueOrThrow({ where: { id: staff.tech } })).units).toEqual({});
    expect(await choose(US, 'https://elsewhere.example/')).toBe('/coolant-bench');
    expect(await choose(US, '//elsewhere.example/coolant-bench')).toBe('/coolant-bench');
  });
});

describe('the bench of a job', () => {
  let job: { jobId: string; vehicleId: string };
  beforeEach(async () => {
    job = await makeJob(test.db, { deskId: staff.desk, template: 'coolant-change' });
    await test.db.coolantProduct.create({
      data: {
        name: 'Proving concentrate',
        glycol: 'ethylene',
        technology: 'organic',
        labelProduct: '1',
        labelWater: '1',
        labelFreezesC: '-36',
        pricePerL: '9.00',
      },
    });
  });

  const url = (): string => `/coolant-bench/jobs/${job.jobId}`;

  async function state(fact: Record<string, string>): Promise<string> {
    const { text } = await tech.get(url()).expect(200);
    const answer = await tech
      .post(`${url()}/facts`)
      .type('form')
      .send({ ...formMarks(text, 'fact'), ...fact });
    expect(answer.status).toBe(303);
    return (await tech.get(String(answer.headers['location'])).expect(200)).text;
  }

  async function drained(): Promise<CardUnderTest> {
    const card = new CardUnderTest(job.jobId, tech);
    await card.done(
      tap('tick', 'keys-tagged'),
      tap('pass', 'measured-cold', { tempC: 22, instrument: 'contact-probe', place: 'top-hose', pressure: 'none', hose: 'soft' }),
      tap('record', 'level-on-arrival', { belowMarkMl: 1000 }),
      tap('tick', 'cap-off'),
      tap('record', 'strength-before', { value: -18, instrument: 'refractometer' }),
      tap('record', 'drained', { litres: 3 }),
      tap('record', 'kept', { litres: 0 }),
    );
    return card;
  }

  it('begins with the card and the car’s memory, each with who said so', async () => {
    await state({ key: 'capacity', figure: '7', capacityKind: 'dry fill', source: 'Handbook 12-3' });
    await drained();
    const page = (await tech.get(url()).expect(200)).text;
    expect(['holds', 'missing', 'out', 'staysReading'].map((field) => valueOf(page, field))).toEqual(['7', '1', '3', '−18']);
    expect(saidBeside(page, 'holds')).toContain('dry fill, Handbook 12-3, Jory 9 Jun 2026.');
    expect(saidBeside(page, 'out')).toContain('Jory 9 Jun, 09:00');
    expect(answerOf(page)).toMatch(/^Pour [\d.]+ L of Proving concentrate and/);
  });

  it('keeps differing statements side by side and never writes one over', async () => {
    await state({ key: 'capacity', figure: '7', capacityKind: 'dry fill', source: 'Handbook 12-3' });
    test.clock.pass({ minutes: 5 });
    const page = await state({ key: 'capacity', figure: '6,4', capacityKind: 'dry fill', source: 'Drained to the last drop' });
    expect(page).toContain('statements differ');
    expect(valueOf(page, 'holds')).toBe('6.4');
    expect(saidBeside(page, 'holds')).toContain('Also stated: 7 L.');
    expect(await test.db.vehicleFact.count({ where: { vehicleId: job.vehicleId, key: 'capacity' } })).toBe(2);
    const [, href = ''] = /<a class="button plain" href="([^"]*)">Reckon with it/.exec(page) ?? [];
    expect(valueOf((await tech.get(href.replaceAll('&#x3D;', '=')).expect(200)).text, 'holds')).toBe('7');
    const entries = await test.db.auditEntry.count({ where: { subject: 'vehicle-fact' } });
    expect(entries).toBe(2);
  });

  it.each([
    [{ key: 'capacity', figure: 'seven', source: 'x' }, 'Type the figure in digits'],
    [{ key: 'capacity', figure: '', source: 'x' }, 'Type the figure in digits'],
    [{ key: 'capacity', figure: '7000', source: 'x' }, 'A system holds 0.1 to 500 L'],
    [{ key: 'cap', figure: '-5', source: 'x' }, 'A cap holds 0 to 300 kPa'],
    [{ key: 'freezing-point', figure: '18', source: 'x' }, 'type the minus sign'],
    [{ key: 'coolant-changed', changedOn: '2026-02-30', source: 'x' }, 'Give a day that exists'],
    [{ key: 'capacity', figure: '7', source: '' }, 'Say where this comes from'],
    [{ key: 'torque', figure: '7', source: 'x' }, 'Say what this is about'],
    [{ key: 'capacity', figure: '1'.repeat(200), source: 'x' }, 'too long for a figure'],
  ])('refuses %j beside its field', async (fact, message) => {
    expect(await state(fact as unknown as Record<string, string>)).toContain(message);
    expect(await test.db.vehicleFact.count()).toBe(0);
  });

  it('takes a statement out of use with its reason, and keeps it on record', async () => {
    const page = await state({ key: 'cap', figure: '140', source: 'Printed on the cap' });
    const { id } = await test.db.vehicleFact.findFirstOrThrow();
    const answer = await tech
      .post(`${url()}/facts/${id}/withdraw`)
      .type('form')
      .send({ ...formMarks(page, 'withdraw'), why: 'Another cap is fitted' });
    expect(answer.status).toBe(303);
    expect(await test.db.vehicleFact.findUniqueOrThrow({ where: { id } })).toMatchObject({ withdrawnWhy: 'Another cap is fitted' });
    expect((await tech.get(url()).expect(200)).text).toContain('Nothing yet.');
  });

  it('holds the filling against what came out, and the reading against the reckoning', async () => {
    await state({ key: 'capacity', figure: '7', capacityKind: 'dry fill', source: 'Handbook 12-3' });
    const card = await drained();
    await card.done(
      tap('pass', 'torqued', { setAt: 20, unit: 'Nm', tightened: 1, of: 1, inSequence: true, document: 'Manual', page: '19-1' }),
      tap('pour-jug', 'first-fill', { productMl: 2000, waterMl: 0, keptMl: 0 }),
      tap('pour-jug', 'first-fill', { productMl: 0, waterMl: 1200, keptMl: 0 }),
      tap('tick', 'first-fill'),
    );
    const page = (await tech.get(url()).expect(200)).text;
    expect(page).toContain('Less went in than came out: air may be trapped.');
    expect(page).toContain('Tolerances: 0.30 L for the filling');
    expect(page).toContain('The mixed coolant has not been read after the run yet.');
    // read straight into the record: the run itself belongs to the card's own tests
    await test.db.jobAction.create({
      data: {
        id: '01890000-0000-7000-8000-000000000001',
        jobId: job.jobId,
        kind: 'record',
        step: 'strength',
        value: { value: -20, instrument: 'refractometer' },
        readAt: test.clock.now(),
        receivedAt: test.clock.now(),
        byId: staff.tech,
        byProof: 'session',
      },
    });
    const read = (await tech.get(url()).expect(200)).text;
    expect(read).toContain('measured: safe to');
  });

  it('is not there for a job that is not on record', async () => {
    await tech.get('/coolant-bench/jobs/01890000-0000-7000-8000-00000000dead').expect(404);
    await tech.get('/coolant-bench/jobs/nothing').expect(404);
  });
});
