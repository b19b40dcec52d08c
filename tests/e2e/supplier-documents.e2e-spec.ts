import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { page, post } from '../support/as-a-browser.ts';
import { makeJob } from '../support/factories.ts';
import { textOfPdf } from '../support/pdf-text.ts';
import { type Agent, formMarks, openTestApp, type StaffName, type TestApp } from '../support/test-app.ts';
import { stockWorkshop } from '../support/workshop-rows.ts';

const NOW = '2026-06-09T08:00:00Z';
const ALL = ['NR-5252', 'NR-5488', 'NR-5489'];
const PAPERS = '/returns-shelf/documents';

let test: TestApp;
let staff: Record<StaffName, string>;
let desk: Agent;
let jobId: string;
let supplierId: string;
beforeAll(async () => {
  test = await openTestApp();
});
beforeEach(async () => {
  test.clock.set(NOW);
  staff = await test.furnish();
  await stockWorkshop(test.db);
  ({ jobId } = await makeJob(test.db, { deskId: staff.desk }));
  desk = await test.as('desk');
  supplierId = (await test.db.supplier.findFirstOrThrow()).id;
});
afterAll(() => test.close());

const unitOf = async (partNumber: string) =>
  test.db.partUnit.findFirstOrThrow({ where: { variant: { partNumber } }, orderBy: { createdAt: 'desc' } });
const openOf = async (partNumber: string): Promise<string> => (await unitOf(partNumber)).openNet.toFixed(2);

async function order(): Promise<void> {
  const variants = await test.db.partVariant.findMany({ select: { id: true } });
  const on = `/parts-bench/orders/jobs/${jobId}/new`;
  await post(desk, on, { on, form: 'order', body: { variants: variants.map(({ id }) => id), expectedOn: '' } });
}

async function takeIn(partNumber: string): Promise<void> {
  const { code } = await unitOf(partNumber);
  await post(desk, '/parts-bench/orders/goods-in', { on: '/parts-bench/orders', form: 'goods-in', body: { code } });
}

async function sendBack(partNumbers: readonly string[]): Promise<void> {
  await order();
  for (const partNumber of ALL) await takeIn(partNumber);
  for (const partNumber of partNumbers) {
    const on = `/returns-shelf/units/${(await unitOf(partNumber)).id}`;
    await post(desk, `${on}/return`, { on, form: 'act', body: { reason: 'not-needed' } });
    await post(desk, `${on}/hand-over`, { on, form: 'act', body: { evidence: 'driver Malk, slip 4417' } });
  }
}

type Line = Partial<Record<'part' | 'text' | 'reference' | 'quantity' | 'amount', string>>;

async function type(kind: 'credit-note' | 'invoice', number: string, lines: readonly Line[], gross = ''): Promise<string> {
  const on = `${PAPERS}/new/${kind}`;
  const column = (name: keyof Line): string[] => lines.map((line) => line[name] ?? '');
  const body = {
    ...{ supplierId, number, datedOn: '2026-06-20', gross },
    ...{ part: column('part'), text: column('text'), reference: column('reference') },
    ...{ quantity: column('quantity'), amount: column('amount') },
  };
  return post(desk, on, { on, form: 'paper', body });
}

async function upload(csv: string | Buffer, { kind = 'statement', name = 'June.csv' } = {}): Promise<string> {
  const on = `${PAPERS}/file`;
  const { text } = await desk.get(on).expect(200);
  const fields = { ...formMarks(text, 'file'), supplierId, kind };
  const call = Object.entries(fields).reduce((form, [key, value]) => form.field(key, value), desk.post(on));
  const answer = await call.attach('file', Buffer.isBuffer(csv) ? csv : Buffer.from(csv), name);
  expect(answer.status).toBe(303);
  return String(answer.headers['location']);
}

const commit = (at: string): Promise<string> => post(desk, `${at}/commit`, { on: at, form: 'commit' });
const differences = async (): Promise<string[]> =>
  (await test.db.supplierDifference.findMany({ where: { settledAt: null }, orderBy: { kind: 'asc' } })).map(
    ({ kind, amount }) => `${kind} ${amount.toFixed(2)}`,
  );

describe('a credit note typed in', () => {
  it('credits its pieces, names what is short, and is entered once', async () => {
    await sendBack(['NR-5252', 'NR-5489']);
    const at = await type('credit-note', 'CN-77', [
      { part: 'NR-5252', text: 'Thermostat', amount: '19,80' },
      { part: 'nr 5489', reference: 'RN-0002', amount: '20.10' },
      { text: 'Carriage', amount: '-6.00' },
    ]);
    expect(at).toMatch(/^\/returns-shelf\/documents\/[0-9a-f-]{36}$/);
    expect((await unitOf('NR-5252')).place).toBe('gone-for-good');
    expect(await openOf('NR-5489')).toBe('6.00');
    expect(await differences()).toEqual(['short 6.00']);
    const text = await page(desk, at);
    expect(text).toContain('6.00 missing: 20.10 came, 26.10 was due.');
    expect(text).toContain('Recognised as carriage.');
    const on = `${PAPERS}/new/credit-note`;
    expect(await type('credit-note', 'cn-77', [{ part: 'NR-5252', amount: '19.80' }])).toBe(on);
    expect(await page(desk, on)).toContain('cn-77 of this supplier is on record already');
    expect(await test.db.unitMoney.count({ where: { kind: 'credited' } })).toBe(2);
  });

  it('asks a person where it has little to go by, and takes one answer of two', async () => {
    await sendBack(['NR-5252', 'NR-5489']);
    const at = await type('credit-note', 'CN-78', [{ text: 'Goodwill', amount: '26.10' }]);
    expect(await openOf('NR-5489')).toBe('26.10');
    expect(await page(desk, at)).toContain('little to go by');
    const match = await test.db.lineMatch.findFirstOrThrow({ where: { state: 'proposed' } });
    const accept = `${at}/matches/${match.id}/accept`;
    const { text } = await desk.get(at);
    const owner = await test.as('owner');
    const { text: ownersText } = await owner.get(at);
    const both = await Promise.all([
      desk
        .post(accept)
        .type('form')
        .send({ ...formMarks(text), role: 'whole' }),
      owner
        .post(accept)
        .type('form')
        .send({ ...formMarks(ownersText), role: 'whole' }),
    ]);
    expect(both.map(({ status }) => status)).toEqual([303, 303]);
    expect(await test.db.unitMoney.count({ where: { kind: 'credited' } })).toBe(1);
    expect(await openOf('NR-5489')).toBe('0.00');
    await post(desk, `${at}/matches/${match.id}/end`, { on: at, form: 'tap', body: { why: 'Taken back' } });
    expect(await openOf('NR-5489')).toBe('26.10');
    expect(await page(desk, at)).toContain('Match by hand');
    const line = await test.db.supplierLine.findFirstOrThrow();
    const { code } = await unitOf('NR-5489');
    expect(await post(desk, `${at}/lines/${line.id}/match`, { on: at, form: 'by-hand', body: { code: 'AAA-AAC' } })).toBe(at);
    expect(await page(desk, at)).toContain('has a mistyped sign');
    await post(desk, `${at}/lines/${line.id}/match`, { on: at, form: 'by-hand', body: { code } });
    expect(await openOf('NR-5489')).toBe('0.00');
  });

  it('that was recorded by hand before is told from one that came twice', async () => {
    await sendBack(['NR-5489']);
    const on = `/returns-shelf/units/${(await unitOf('NR-5489')).id}`;
    await post(desk, `${on}/money`, { on, form: 'money', body: { kind: 'credited', amount: '26.10', reference: 'phone' } });
    const at = await type('credit-note', 'CN-79', [{ part: 'NR-5489', reference: 'RN-0001', amount: '26.10' }]);
    expect(await differences()).toEqual(['twice 26.10']);
    expect(await openOf('NR-5489')).toBe('0.00');
    const match = await test.db.lineMatch.findFirstOrThrow();
    await post(desk, `${at}/matches/${match.id}/accept`, { on: at, form: 'tap', body: { role: 'same' } });
    expect(await differences()).toEqual([]);
    expect(await test.db.unitMoney.count({ where: { kind: 'credited' } })).toBe(1);
  });

  it('withdrawn takes its entries back, and can be entered anew', async () => {
    await sendBack(['NR-5489']);
    const at = await type('credit-note', 'CN-80', [{ part: 'NR-5489', reference: 'RN-0001', amount: '20.00' }]);
    expect(await openOf('NR-5489')).toBe('6.10');
    await post(desk, `${at}/withdraw`, { on: at, form: 'withdraw', body: { why: 'Typed from the wrong paper' } });
    expect(await openOf('NR-5489')).toBe('26.10');
    expect(await differences()).toEqual([]);
    await type('credit-note', 'CN-80', [{ part: 'NR-5489', reference: 'RN-0001', amount: '26.10' }]);
    expect((await unitOf('NR-5489')).place).toBe('gone-for-good');
  });

  it('that can’t be read is told line by line, with nothing written', async () => {
    const on = `${PAPERS}/new/credit-note`;
    expect(await type('credit-note', 'CN-81', [{ part: 'NR-5489', quantity: '0', amount: 'x' }, { amount: '12' }], '5')).toBe(on);
    const text = await page(desk, on);
    expect(text).toContain('Line 1: &quot;x&quot; is no part of an amount.');
    expect(text).toContain('Line 1: give the pieces as a whole number of 1 or more.');
    expect(await test.db.supplierDocument.count()).toBe(0);
  });
});

describe('a purchase invoice', () => {
  it('says what was charged: before the piece comes, and at another price than ordered', async () => {
    await order();
    await takeIn('NR-5489');
    const at = await type('invoice', 'INV-9', [
      { part: 'NR-5489', reference: 'order 1', amount: '27.40' },
      { part: 'NR-5252', reference: 'order 1', amount: '19.80' },
      { part: 'NR-9999', amount: '4.00' },
      { text: 'Carriage', amount: '6.00' },
    ]);
    expect(await openOf('NR-5489')).toBe('27.40');
    expect(await openOf('NR-5252')).toBe('19.80');
    expect((await differences()).sort()).toEqual(['price 1.30', 'unknown 4.00']);
    await takeIn('NR-5252');
    expect(await openOf('NR-5252')).toBe('19.80');
    await type('invoice', 'INV-10', [{ part: 'NR-5489', reference: 'order 1', amount: '27.40' }]);
    expect(await openOf('NR-5489')).toBe('27.40');
    expect((await differences()).sort()).toEqual(['price 1.30', 'twice 27.40', 'unknown 4.00']);
    expect(await page(desk, at)).toContain('27.40, 1.30 more than ordered (26.10)');
  });
});

describe('a statement from a file', () => {
  const statement = [
    'Norrow Parts;;;;',
    'Account 4711;;;;',
    'Doc. date;Document no;Your ref;Details;Amount',
    '20.06.2026;CN-77;RN-0001;Credit note;-20,00',
    '21.06.2026;CN-77;RN-0001;Credit note;-20,00',
    '22.06.2026;P-1;;Payment, thank you;-100,00',
    '23.06.2026;INV-3;;Invoice;1.234,50',
    '24.06.2026;X;;Credit;nothing',
  ].join('\r\n');

  it('is read, looked at, taken in once, and shows one short, one missing, one twice', async () => {
    await sendBack(['NR-5252', 'NR-5489']);
    test.clock.set('2026-07-20T08:00:00Z');
    desk = await test.as('desk');
    const at = await upload(Buffer.from(statement, 'latin1'));
    const preview = await page(desk, at);
    expect(preview).toContain('4 lines can be read, 1 can’t');
    expect(preview).toContain('Line 8: &quot;n&quot; is no part of an amount.');
    expect(await test.db.supplierDocument.count()).toBe(0);
    expect(await commit(at)).toBe(at);
    await commit(at);
    expect(await test.db.supplierDocument.count()).toBe(1);
    expect((await differences()).sort()).toEqual(['not-credited 32.10', 'short 4.35', 'twice 20.00']);
    // The same file leads to what it became; so does a file with the same statement in it.
    expect(await upload(Buffer.from(statement, 'latin1'))).toBe(at);
    expect(await page(desk, PAPERS)).toContain('3 differences are open');
    expect(await openOf('NR-5252')).toBe('19.80');
    // A credit note for what was missing ends that difference by itself.
    await type('credit-note', 'CN-90', [{ part: 'NR-5489', reference: 'RN-0002', amount: '26.10' }]);
    expect(await page(desk, PAPERS)).toContain('2 differences are open');
  });

  it('is read as a person says, and the next one of this supplier by the same columns', async () => {
    const at = await upload('when|what|how much\n06/09/2026|Invoice INV-3|12.00\n');
    const reading = {
      encoding: 'utf-8',
      separator: 'bar',
      decimalMark: '.',
      dayOrder: 'mdy',
      headLine: '1',
      date: '0',
      text: '1',
      amount: '2',
    };
    await post(desk, `${at}/reading`, { on: at, form: 'reading', body: reading });
    expect(await page(desk, at)).toContain('2026-06-09');
    await commit(at);
    const next = await upload('when|what|how much\n06/10/2026|Invoice INV-4|13.00\n', { name: 'July.csv' });
    expect(await page(desk, next)).toContain('2026-06-10');
  });

  it.each([
    ['nothing', '', 'Choose the file that the supplier sent.'],
    ['a picture', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 1]), 'This is no text file'],
    ['an open quotation mark', 'date;amount\n"20.06.2026;5,00', 'is never closed'],
  ])('that is %s is told', async (_what, csv, words) => {
    const to = await upload(csv);
    expect(await page(desk, to)).toContain(words);
    expect(await test.db.supplierDocument.count()).toBe(0);
  });

  it('of more than 5 MB is refused', async () => {
    const to = await upload(Buffer.alloc(5 * 1024 * 1024 + 1, 'a'));
    expect(to).toBe(`${PAPERS}/file`);
    expect(await page(desk, to)).toContain('is larger than 5 MB');
  });
});

describe('a list of credits from a file', () => {
  it('is as many credit notes as it has numbers; those on record are passed over', async () => {
    await sendBack(['NR-5252', 'NR-5489']);
    await type('credit-note', 'CN-1', [{ part: 'NR-5252', reference: 'RN-0001', amount: '19.80' }]);
    const csv = 'Credit note,Date,Part number,Qty,Net amount\nCN-1,2026-06-20,NR-5252,1,19.80\nCN-2,2026-06-21,NR-5489,1,26.10\n';
    const at = await upload(csv, { kind: 'credit-lines' });
    expect(await page(desk, at)).toContain('is on record already and is passed over');
    await commit(at);
    expect(await test.db.supplierDocument.count()).toBe(2);
    expect((await unitOf('NR-5489')).place).toBe('gone-for-good');
    expect(await test.db.unitMoney.count({ where: { kind: 'credited' } })).toBe(2);
  });
});

describe('the papers of the shelf', () => {
  it('are a return note that is signed once, and labels with the code', async () => {
    await order();
    for (const partNumber of ALL) await takeIn(partNumber);
    for (const partNumber of ['NR-5252', 'NR-5489']) {
      const on = `/returns-shelf/units/${(await unitOf(partNumber)).id}`;
      await post(desk, `${on}/return`, { on, form: 'act', body: { reason: 'not-needed' } });
    }
    const on = `/returns-shelf/hand-over/${supplierId}`;
    const units = [(await unitOf('NR-5252')).id, (await unitOf('NR-5489')).id];
    const note = await post(desk, `${on}/note`, { on, form: 'hand-over', body: { units } });
    expect(await page(desk, note)).toContain('Return note RN-0001');
    const { code } = await unitOf('NR-5252');
    const pdf = await desk.get(`${note}/note.pdf`).expect(200).expect('content-type', 'application/pdf');
    const printed = await textOfPdf(pdf.body as Uint8Array);
    expect(printed).toContain('RN-0001');
    expect(printed).toContain(`${code.slice(0, 3)}-${code.slice(3)}`);
    await post(desk, `${note}/hand-over`, { on: note, form: 'hand-over', body: { evidence: 'tracking 99' } });
    expect(await test.db.unitMove.count({ where: { to: 'handed-over', evidence: 'tracking 99' } })).toBe(2);
    const labels = await desk.get('/returns-shelf/labels.pdf').expect(200);
    expect(await textOfPdf(labels.body as Uint8Array)).toContain('NR-5488');
  });
});
