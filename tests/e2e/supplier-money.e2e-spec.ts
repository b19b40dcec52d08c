import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { creditDueOn, exposure } from '#libs/unit-life';
import { ExposureRepository } from '../../apps/server/src/features/returns/exposure.repository.ts';
import { page } from '../support/as-a-browser.ts';
import { type Agent, openTestApp, type TestApp } from '../support/test-app.ts';
import { stockWorkshop } from '../support/workshop-rows.ts';

const NOW = '2026-06-09T08:00:00Z';
const MONEY = '/returns-shelf/money';

let test: TestApp;
let owner: Agent;
beforeAll(async () => {
  test = await openTestApp();
});
beforeEach(async () => {
  test.clock.set(NOW);
  await test.furnish();
  await stockWorkshop(test.db);
  owner = await test.as('owner');
});
afterAll(() => test.close());

interface Piece {
  partNumber?: string;
  charged: string;
  credited?: string;
  lost?: string;
  sentDaysAgo?: number;
  returnInDays?: number;
}

const day = (daysFromNow: number): Date => new Date(new Date(NOW).getTime() + daysFromNow * 86_400_000);
let made = 0;

/** A piece with its moves and money, as the database itself takes them. */
async function lay({ partNumber = 'NR-5488', charged, credited, lost, sentDaysAgo, returnInDays }: Piece): Promise<string> {
  const { id: variantId } = await test.db.partVariant.findFirstOrThrow({ where: { partNumber } });
  made += 1;
  const returnBy = returnInDays === undefined ? null : day(returnInDays);
  const data = { code: `T${made}`, variantId, arrivalReason: 'surplus', createdAt: day(-90), returnBy };
  const { id: unitId } = await test.db.partUnit.create({ data });
  const move = (from: string, to: string, at: Date) => test.db.unitMove.create({ data: { unitId, from, to, at, evidence: 'slip' } });
  await move('expected', 'set-aside', day(-80));
  await move('set-aside', 'to-return', day(-75));
  if (sentDaysAgo !== undefined) await move('to-return', 'handed-over', day(-sentDaysAgo));
  const entries = { charged, credited, 'loss-accepted': lost };
  for (const [kind, amountNet] of Object.entries(entries))
    if (amountNet !== undefined) await test.db.unitMoney.create({ data: { unitId, kind, amountNet, at: day(-1) } });
  return unitId;
}

async function layMany(): Promise<void> {
  const other = await test.db.supplier.create({ data: { name: '=Quay Parts', returnDays: 14, daysToCredit: 10 } });
  const { familyId } = await test.db.partVariant.findFirstOrThrow();
  await test.db.partVariant.create({ data: { familyId, supplierId: other.id, partNumber: 'Q-1', name: 'Cap', priceNet: '9.00' } });
  await lay({ charged: '23.40', sentDaysAgo: 3 });
  await lay({ charged: '10.00', credited: '4.00', sentDaysAgo: 14 });
  await lay({ charged: '11.00', sentDaysAgo: 15 });
  await lay({ charged: '30.00', sentDaysAgo: 31 });
  await lay({ charged: '7.77', sentDaysAgo: 61 });
  await lay({ partNumber: 'Q-1', charged: '9.00', sentDaysAgo: 11 });
  await lay({ partNumber: 'Q-1', charged: '9.00', credited: '12.00', sentDaysAgo: 11 });
  await lay({ partNumber: 'Q-1', charged: '5.00', returnInDays: 7 });
  await lay({ partNumber: 'Q-1', charged: '6.00', returnInDays: 8 });
  await lay({ partNumber: 'Q-1', charged: '8.00', returnInDays: -1 });
  await lay({ charged: '20.00', credited: '15.00', lost: '5.00', sentDaysAgo: 20 });
}

describe('the owner’s page of money at suppliers', () => {
  it('sums as the library does', async () => {
    await layMany();
    const units = await test.db.partUnit.findMany({ include: { variant: { include: { supplier: true } } } });
    const sent = (at: Date | null): string | null => (at === null ? null : at.toISOString().slice(0, 10));
    const expected = exposure(
      units.map(({ place, openNet, handedOverAt, returnBy, variant }) => ({
        supplierId: variant.supplierId,
        place: place as 'handed-over',
        open: openNet.toFixed(2),
        handedOverOn: sent(handedOverAt),
        creditDueOn: handedOverAt === null ? null : creditDueOn(variant.supplier, sent(handedOverAt) ?? ''),
        lastReturnOn: sent(returnBy),
      })),
      { today: '2026-06-09', soonDays: 7 },
    );
    const rows = await test.app
      .get(ExposureRepository, { strict: false })
      .bySupplier({ today: '2026-06-09', timeZone: 'Europe/Dublin', soonDays: 7 });
    const money = (amount: string): string => Number(amount).toFixed(2);
    expect(rows).toHaveLength(2);
    expect(
      rows.map(({ supplier: _, phone: __, byAge, ...row }) => ({
        ...row,
        ...Object.fromEntries(['atSupplier', 'late', 'onShelf', 'leavesSoon', 'weOwe'].map((key) => [key, money(row[key as 'late'])])),
        byAge: Object.fromEntries(Object.entries(byAge).map(([key, amount]) => [key, money(amount)])),
      })),
    ).toEqual(expected);
  });

  it('shows what is out, what is late, what must leave, what came back and what was lost', async () => {
    await layMany();
    const text = await page(owner, MONEY);
    expect(text).toContain('EUR 87.17 is at suppliers; EUR 46.77 of it is late.');
    expect(text).toContain('EUR 5.00 on the shelf must leave within 7 days or it is ours.');
    expect(text).toContain('By kind of part');
    expect(text).toMatch(/thermostat 1 5\.00/i);
    expect(text).toContain('EUR 31.00'); // came back in June
    const units = await page(owner, `${MONEY}/units?what=late`);
    expect(units).toContain('3 pieces, late.');
    const none = await page(owner, `${MONEY}/units?what=soon&age=to-7`);
    expect(none).toContain('1 piece');
  });

  it('gives a table that no spreadsheet runs', async () => {
    await layMany();
    const { text, headers } = await owner.get(`${MONEY}/units.csv`).expect(200);
    expect(headers['content-type']).toContain('text/csv');
    expect(text.split('\r\n')).toHaveLength(8);
    expect(text).toContain(",'=Quay Parts,");
    await owner.get(`${MONEY}/units.csv?what=nothing`).expect(400);
  });

  it('is the owner’s', async () => {
    await (await test.as('desk')).get(MONEY).expect(403);
    expect(await page(owner, MONEY)).toContain('No money is at suppliers.');
  });
});
