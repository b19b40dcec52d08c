import type { Prisma, Tx } from '#libs/db';
import { Decimal } from '#libs/money';
import { nextId } from '../ids.ts';
import type { JobPlan } from '../plan.ts';
import type { Random } from '../random.ts';
import { isReached } from '../story.ts';
import { laterBy } from '../workshop-hours.ts';
import type { DemoVariant } from './catalogue.ts';
import type { Staff } from './workshop.ts';

const DAY_MIN = 24 * 60;
const CODE_SIGNS = 'ACDEFHJKMNPRTUVWXY34679';

interface Step {
  to: string;
  at: Date;
  evidence?: string;
}

interface UnitStory {
  steps: Step[];
  money: { kind: string; amountNet: string; at: Date; reference: string; why?: string }[];
}

/** What happened to one ordered piece so far, and to its money. */
function unitStory(
  random: Random,
  { plan, variant, isRight, now }: { plan: JobPlan; variant: DemoVariant; isRight: boolean; now: Date },
): UnitStory {
  const arrived = laterBy(plan.arrivesAt, -60);
  if (plan.chapter === 'expected' || plan.chapter === 'spoken-of') return { steps: [], money: [] };
  const steps: Step[] = [{ to: 'set-aside', at: arrived }];
  const money = [{ kind: 'charged', amountNet: variant.priceNet, at: arrived, reference: 'delivery note' }];
  if (isRight && isReached(plan.chapter, 'closed-up'))
    return { steps: [...steps, { to: 'fitted', at: laterBy(plan.arrivesAt, 130) }], money };
  if (!isReached(plan.chapter, 'gone')) return { steps, money };
  const ready = laterBy(plan.arrivesAt, 420);
  steps.push({ to: 'to-return', at: ready });
  if (plan.daysAgo < 6) return { steps, money };
  const sent = laterBy(ready, 3 * DAY_MIN);
  steps.push({ to: 'handed-over', at: sent, evidence: `signed by the driver, slip ${random.between(1000, 9999)}` });
  const credited = laterBy(sent, random.between(8, 24) * DAY_MIN);
  // Two suppliers in the demo forget one now and then: those are the owner's to chase.
  if (credited > now || random.chance(0.06)) return { steps, money };
  const fee = new Decimal(variant.priceNet).times(variant.terms.restockingPct).dividedBy(100).toDecimalPlaces(2);
  const credit = new Decimal(variant.priceNet).minus(fee).toFixed(2);
  const entries = [
    ...money,
    { kind: 'credited', amountNet: credit, at: credited, reference: `credit note ${random.between(10_000, 99_999)}` },
  ];
  if (fee.gt(0)) entries.push({ kind: 'loss-accepted', amountNet: fee.toFixed(2), at: credited, reference: 'restocking within terms' });
  return { steps: [...steps, { to: 'gone-for-good', at: credited }], money: entries };
}

function returnBy(variant: DemoVariant, arrived: Date): Date {
  return new Date(Date.UTC(arrived.getUTCFullYear(), arrived.getUTCMonth(), arrived.getUTCDate() + variant.terms.returnDays));
}

/** Orders every variant that is listed for the engine, as workshops do, and tells what became of each piece. */
export async function writeUnits(
  tx: Tx,
  random: Random,
  { plan, variants, rightId, staff, now }: { plan: JobPlan; variants: readonly DemoVariant[]; rightId: string; staff: Staff; now: Date },
): Promise<void> {
  for (const variant of variants) {
    const order = await tx.purchaseOrder.create({
      data: {
        supplierId: variant.supplierId,
        orderedAt: plan.createdAt,
        orderedById: staff.deskId,
        lines: { create: { variantId: variant.variantId, quantity: 1, priceNet: variant.priceNet } },
      },
      include: { lines: true },
    });
    const isRight = variant.variantId === rightId;
    const { steps, money } = unitStory(random, { plan, variant, isRight, now });
    const arrived = steps[0]?.at ?? null;
    const unitId = nextId(random);
    await tx.partUnit.create({
      data: {
        id: unitId,
        code: Array.from({ length: 5 }, () => random.pick([...CODE_SIGNS])).join(''),
        variantId: variant.variantId,
        orderLineId: order.lines[0]?.id ?? null,
        jobId: plan.id,
        isOpened: isReached(plan.chapter, 'opened') && !variant.terms.unopenedOnly,
        arrivedAt: arrived,
        returnBy: arrived ? returnBy(variant, arrived) : null,
        createdAt: plan.createdAt,
      },
    });
    const entries: Prisma.UnitMoneyCreateManyInput[] = money.map((entry) => ({ ...entry, unitId, byId: staff.deskId }));
    if (entries.length > 0) await tx.unitMoney.createMany({ data: entries });
    let from = 'expected';
    for (const { to, at, evidence = '' } of steps) {
      await tx.unitMove.create({ data: { unitId, from, to, at, byId: staff.deskId, evidence } });
      from = to;
    }
  }
}

/** The variant that really belongs to an engine in this demo: mostly the first listed, so that priors mean something. */
export function rightVariant(random: Random, variants: readonly DemoVariant[]): DemoVariant {
  const [usual] = variants;
  if (!usual) throw new Error('No variant is listed for this engine');
  return random.chance(0.8) ? usual : random.pick(variants);
}
