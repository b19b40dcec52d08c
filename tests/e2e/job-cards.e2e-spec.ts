import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { CardUnderTest, newThermostatJob, closedUp, opened, proven, takenIn, tap } from '../support/job-card.ts';
import { type Agent, openTestApp, type StaffName, type TestApp } from '../support/test-app.ts';

let test: TestApp;
let staff: Record<StaffName, string>;
let tech: Agent;
let card: CardUnderTest;

beforeAll(async () => {
  test = await openTestApp();
});
beforeEach(async () => {
  test.clock.set('2026-06-09T08:00:00Z');
  staff = await test.furnish();
  tech = await test.as('tech');
  card = new CardUnderTest(await newThermostatJob(test, staff.desk), tech);
});
afterAll(() => test.close());

const cold = { act: 'do', tempC: '47.5', place: 'top-hose', signs: 'soft' };

describe('a technician’s walk by forms alone', () => {
  it('goes from the keys to the proof, each form leading on to the next step', async () => {
    expect(await card.submit('keys-tagged', 'work', { act: 'do' })).toBe(card.url());
    expect(await card.page()).toContain('<h1>Odometer read</h1>');
    await card.submit('odometer', 'work', { act: 'do', value: '123400' });
    await card.submit('damage-noted', 'work', { act: 'do' });
    await card.submit('thermostat-kind', 'work', { act: 'do', choice: 'wax' });
    await card.submit('access-off', 'work', { act: 'do', items: 'Air duct\nCover' });
    await card.submit('measured-cold', 'work', { ...cold, instrument: 'contact-probe' });
    await card.submit('level-on-arrival', 'work', { act: 'do', side: 'below', belowMarkMl: '400' });
    await card.submit('cap-off', 'work', { act: 'do' });
    await card.submit('drained', 'work', { act: 'do', litres: '4,2', about: '1' });
    await card.submit('kept', 'work', { act: 'do', litres: '0' });
    await card.submit('housing-off', 'work', { act: 'do' });
    await card.submit('variant', 'without', { act: 'without', reason: 'tool-not-here', withoutWords: '' });
    await card.submit('fitted', 'work', { act: 'do' });
    await card.submit('torqued', 'work', {
      act: 'do',
      setAt: '9',
      unit: 'Nm',
      tightened: '2',
      of: '2',
      inSequence: '1',
      document: 'Workshop manual',
      page: '19-12',
      thread: 'M6',
      then: '',
    });
    expect(await card.submit('first-fill', 'work', { act: 'pour', productMl: '2000', waterMl: '2000', keptMl: '' })).toBe(
      card.url('first-fill'),
    );
    expect(await card.submit('first-fill', 'close', { act: 'close' })).toBe(card.url());
    await card.submit('tools-counted', 'work', { act: 'do', counted: '12', of: '12' });
    expect(await card.submit('short-run', 'clock', { act: 'start' })).toBe(card.url('short-run'));
    test.clock.pass({ minutes: 3 });
    expect(await card.submit('short-run', 'clock', { act: 'stop' })).toBe(card.url());
    await card.submit('run-hot', 'work', { act: 'do' });
    await card.submit('heater-hoses', 'work', { act: 'do', choice: 'both-hot' });
    await card.submit('radiator-side', 'work', { act: 'do', choice: 'cold-to-hot' });
    await card.submit('no-leak', 'work', { act: 'do', choice: 'none' });
    await card.submit('fan', 'work', { act: 'do', choice: 'not-reached', 'not-reached.outsideC': '12', 'not-reached.minutes': '14' });
    await card.submit('left-to-cool', 'work', { act: 'do' });
    await card.submit('strength', 'work', { act: 'do', value: '24', instrument: 'refractometer' });
    await card.submit('access-on', 'work', { act: 'do', 'left-1': 'Cover', 'why-1': 'clip broken' });
    await card.submit('keys-out', 'work', { act: 'do' });

    const read = await card.read();
    expect(read.stage).toBe('keys-out');
    expect(read.differences).toEqual([]);
    expect(read.holds).toMatchObject({
      'safe-to-open': { state: 'passed' },
      'variant-settled': { state: 'passed-without' },
      'closed-and-torqued': { state: 'passed' },
      'clear-of-tools-and-fan': { state: 'passed' },
      proof: { state: 'passed' },
    });
    expect(read.steps.find(({ key }) => key === 'strength')?.value).toMatchObject({ value: -24 });
    expect((await test.db.job.findUniqueOrThrow({ where: { id: card.job } })).stage).toBe('keys-out');
  });

  it('shows every step of the card without an error', async () => {
    await card.done(...proven());
    for (const { key } of (await card.read()).steps) {
      expect(await card.page(key)).toContain('<main class="work"');
    }
  });
});

describe('safe to open', () => {
  beforeEach(() => card.done(...takenIn()));

  it('keeps the drain shut while it is shut, and a mistake leaves no trace', async () => {
    expect(await card.page('drained')).toContain("'Safe to open' is shut");
    const marks = await card.marks('tray', 'work');
    const answer = await tech
      .post(`${card.url()}/actions`)
      .type('form')
      .send({ ...marks, _page: card.url('drained'), step: 'drained', act: 'do', litres: '4.2' });
    expect(answer.headers['location']).toBe(card.url('drained'));
    const page = await card.page('drained');
    expect(page).toContain('That did not go onto the card yet');
    expect(await test.db.jobAction.count({ where: { jobId: card.job, step: 'drained' } })).toBe(0);
  });

  it('keeps what a tablet sends behind a shut hold point as a difference', async () => {
    const [answer] = await card.send(tap('record', 'drained', { litres: 4.2 }));
    expect(answer?.difference).toContain('is shut');
    const read = await card.read();
    expect(read.differences).toMatchObject([{ code: 'behind-hold', isSettled: false }]);
    expect(read.steps.find(({ key }) => key === 'drained')?.state).toBe('open');
    expect(await card.page()).toContain('Did not fit the card');
  });

  it('is not passed by 47.5 ± 4.0, and is by 47.5 ± 2.0', async () => {
    expect(await card.submit('measured-cold', 'work', { ...cold, instrument: 'infrared' })).toBe(card.url('measured-cold'));
    const page = await card.page('measured-cold');
    expect(page).toContain('Not sure yet');
    expect(page).toContain('47.5 + 4.0 = 51.5, over 50');
    expect(await card.hold('safe-to-open')).toBe('shut');

    expect(await card.submit('measured-cold', 'work', { ...cold, instrument: 'contact-probe' })).toBe(card.url());
    expect(await card.hold('safe-to-open')).toBe('passed');
    expect((await card.read()).differences).toEqual([]);
  });

  it('is passed by nobody under pressure, whatever the temperature', async () => {
    await card.submit('measured-cold', 'work', { ...cold, tempC: '20', instrument: 'contact-probe', signs: 'hard' });
    expect(await card.hold('safe-to-open')).toBe('shut');
    const warm = { act: 'without', reason: 'not-measured', second: staff.owner, withoutWords: 'stood here since Friday' };
    await card.submit('measured-cold', 'without', warm);
    expect(await card.page('measured-cold')).toContain('For pressure there is no exception.');
    const [sent] = await card.send(
      tap('pass-without', 'measured-cold', {
        pressure: 'some',
        hose: 'hard',
        reason: 'too-warm',
        second: staff.owner,
        words: 'it will do',
      }),
    );
    expect(sent?.difference).toContain('there is no exception');
    expect(await card.hold('safe-to-open')).toBe('shut');
  });

  it('is passed without a reading by two people who say why, never by one', async () => {
    const warm = { act: 'without', reason: 'not-measured', noPressure: '1', withoutWords: 'stood here since Friday' };
    await card.submit('measured-cold', 'without', { ...warm, second: staff.tech });
    expect(await card.page('measured-cold')).toContain('the second person has to be somebody else');
    expect(await card.hold('safe-to-open')).toBe('shut');
    await card.submit('measured-cold', 'without', { ...warm, second: staff.owner });
    expect(await card.hold('safe-to-open')).toBe('passed-without');
    expect(await card.page('measured-cold')).toContain('Second person: Dagny');
  });

  it('waits on a one-person site', async () => {
    await test.db.workshop.update({ where: { id: 1 }, data: { isOnePerson: true } });
    expect(await card.page('measured-cold')).not.toContain('say why');
    const [sent] = await card.send(
      tap('pass-without', 'measured-cold', { pressure: 'none', reason: 'not-measured', second: staff.owner, words: 'cold' }),
    );
    expect(sent?.difference).toContain('nobody else is here');
  });
});

describe('the other hold points', () => {
  it('keep fitting behind the variant, and the car behind the proof', async () => {
    await card.done(...opened());
    const [fitted] = await card.send(tap('tick', 'fitted'));
    expect(fitted?.difference).toContain('Variant settled');
    expect(await card.page('variant')).toContain(`href="/parts-bench/jobs/${card.job}"`);
    await card.done(tap('pass', 'variant', { variant: 'HM-T88', basis: 'side-by-side' }), tap('tick', 'fitted'));
    const [left] = await card.send(tap('tick', 'keys-out'));
    expect(left?.difference).toContain('Proof');
  });

  it('take a torque only with its document, and doubt a slip of the unit', async () => {
    await card.done(...opened(), tap('pass', 'variant', { variant: 'HM-T88', basis: 'stamp' }));
    const torque = { act: 'do', setAt: '90', unit: 'Nm', tightened: '2', of: '2', inSequence: '1', thread: 'M6' };
    expect(await card.submit('torqued', 'work', { ...torque, document: '', page: '' })).toBe(card.url('torqued'));
    const refused = await card.page('torqued');
    expect(refused).toContain('Name the document the value is printed in.');
    expect(refused).toContain('value="90"');
    await card.submit('torqued', 'work', { ...torque, document: 'Workshop manual', page: '19-12' });
    expect(await card.hold('closed-and-torqued')).toBe('passed');
    const page = await card.page('torqued');
    expect(page).toContain('90 lbf·in would be 10.2 Nm');
    expect(page).toContain('First time this value is used here');
  });

  it('stay shut while one tool is missing', async () => {
    await card.done(...closedUp(), tap('tick', 'hoses-on'));
    expect(await card.submit('tools-counted', 'work', { act: 'do', counted: '11', of: '12' })).toBe(card.url('tools-counted'));
    expect(await card.page('tools-counted')).toContain('11 of 12');
    expect(await card.hold('clear-of-tools-and-fan')).toBe('shut');
  });
});

describe('when the keys are out', () => {
  it('what was not done is owed with a date, and is done later', async () => {
    await card.done(...proven(), tap('tick', 'left-to-cool'), tap('tick', 'keys-out'));
    expect((await card.read()).debts).toMatchObject([
      { kind: 'waste', state: 'open' },
      { kind: 'level-check', state: 'open', due: '2026-06-12T08:00:00.000Z' },
      { kind: 'after-log', state: 'open' },
    ]);
    expect(await card.page('cold-level')).toContain('Owed by 12 Jun 2026');
    test.clock.set('2026-06-10T07:00:00Z');
    card.signedInAgain(await test.as('tech'));
    await card.submit('cold-level', 'work', { act: 'do', side: 'below', belowMarkMl: '60', waterMl: '60', productMl: '', keptMl: '' });
    const rows = await test.db.jobDebt.findMany({ where: { jobId: card.job, kind: 'level-check' } });
    expect(rows).toMatchObject([{ ending: 'done' }]);
  });

  it('only the owner lets go of what is owed', async () => {
    await card.done(...proven(), tap('tick', 'keys-out'));
    expect(await card.page('after-log')).not.toContain('Let it go');
    await tech
      .post(`${card.api}/actions`)
      .set('x-requested-with', 'fetch')
      .send({ actions: [tap('let-go', 'after-log', { reason: 'sold' })] })
      .expect(403);
    const owner = await test.as('owner');
    await card.submit('after-log', 'let-go', { act: 'let-go', letGo: 'car sold abroad' }, { agent: owner });
    expect((await card.read()).debts.find(({ kind }) => kind === 'after-log')?.state).toBe('let-go');
  });
});

describe('this car’s own figures', () => {
  beforeEach(async () => {
    await test.db.coolantProduct.create({
      data: {
        name: 'Test coolant',
        glycol: 'ethylene',
        technology: 'organic',
        labelProduct: 1,
        labelWater: 1,
        labelFreezesC: -37,
        pricePerL: 9,
      },
    });
    await card.done(...closedUp(), tap('tick', 'hoses-on'));
  });

  const state = (form: string, body: Record<string, string>): Promise<string> => card.submit('first-fill', form, body, { to: 'facts' });

  it('are asked for with their source, and give the jugs, each one tap', async () => {
    expect(await card.page('first-fill')).toContain('For the recipe of this car say first: what the system holds');
    await state('capacity', { key: 'capacity', figure: '6,2', words: 'service refill', source: 'Handbook, page 212' });
    expect(await card.page('first-fill')).toContain('how strong the coolant is that stays in the block');
    await state('residual', { key: 'freezing-point', figure: '18', source: 'read today' });
    const page = await card.page('first-fill');
    expect(page).toContain('Handbook, page 212, Jory');
    expect(page).toContain('Kept coolant of this car to the 1000 mL mark.');
    const jugs = Number(/Jug 1 of (\d+) is in/.exec(page)?.[1]);
    expect(jugs).toBeGreaterThan(1);
    await card.submit('first-fill', 'pour-next', { act: 'pour', productMl: '0', waterMl: '0', keptMl: '1000' });
    expect(await card.page('first-fill')).toContain(`Jug 2 of ${jugs} is in`);
    expect((await card.read()).facts).toMatchObject({ jugsPoured: 1, filledL: 1 });
    expect(await test.db.vehicleFact.findMany({ orderBy: { enteredAt: 'asc' } })).toMatchObject([
      { key: 'capacity', unit: 'L', enteredById: staff.tech, jobId: card.job },
      { key: 'freezing-point', unit: '°C' },
    ]);
  });

  it('stand beside what was stated before, never over it', async () => {
    await state('capacity', { key: 'capacity', figure: '6.2', words: 'service refill', source: 'Handbook' });
    test.clock.pass({ minutes: 1 });
    await state('capacity', { key: 'capacity', figure: '6.8', words: 'dry fill', source: 'Data sheet' });
    const page = await card.page('first-fill');
    expect(page).toContain('The system holds 6.8 L');
    expect(page).toContain('Also stated: 6.2 L');
  });

  it.each([
    ['nothing', { figure: '0', source: 'x' }],
    ['words', { figure: 'six', source: 'x' }],
    ['no source', { figure: '6', source: ' ' }],
  ])('are refused as %s, with what was typed', async (_what, body) => {
    expect(await state('capacity', { key: 'capacity', words: '', ...body })).toBe(card.url('first-fill'));
    expect(await card.page('first-fill')).toContain(`value="${body.figure}"`);
    expect(await test.db.vehicleFact.count()).toBe(0);
  });

  it('offer a torque of this engine as it was used before, with its page, and fill in none', async () => {
    card = new CardUnderTest(await newThermostatJob(test, staff.desk), tech);
    const page = await card.page('torqued');
    expect(page).toContain('On this engine before: 9 Nm, Workshop manual, page 19-12');
    expect(page).not.toMatch(/name="setAt"[^>]*value="9"/);
  });
});
