import { type Action, applyAction, type CardState, emptyCard, type Stage, TEMPLATES } from '#libs/checklist';
import { Prisma, type Tx } from '#libs/db';
import { stagePath } from '../../../apps/server/src/features/job-cards/stage-path.ts';
import { nextId } from '../ids.ts';
import type { JobPlan } from '../plan.ts';
import type { Random } from '../random.ts';
import { isReached, type StoryFacts, tellStory } from '../story.ts';
import { laterBy } from '../workshop-hours.ts';
import type { Staff } from './workshop.ts';

export interface WrittenJob {
  plan: JobPlan;
  card: CardState;
  keysOutAt: Date | null;
}

interface StageRow {
  from: string;
  to: string;
  at: Date;
  byId: string | null;
  actionId: string | null;
}

const templateOf = (key: string): (typeof TEMPLATES)[number] => {
  const template = TEMPLATES.find((known) => known.key === key);
  if (!template) throw new Error(`No template ${key}`);
  return template;
};

function factsOf(random: Random, plan: JobPlan, variant: string): StoryFacts {
  const { capacityL } = plan.car.model.engine;
  return {
    odometerKm: plan.car.odometerKm - plan.daysAgo * 30,
    capacityL,
    drainedL: Math.round((capacityL * random.between(55, 75)) / 10) / 10,
    missingMl: random.between(0, 8) * 100,
    variant,
    strengthC: -random.between(24, 33),
    morningMl: random.between(0, 9) * 10,
  };
}

/** The card's actions with what followed from each: the stage and the litres in the drum. */
function play(
  plan: JobPlan,
  actions: readonly Action[],
  staff: Staff,
): { card: CardState; stages: StageRow[]; waste: { actionId: string; volumeL: number; at: Date }[] } {
  let card = emptyCard(templateOf(plan.template), { onePersonSite: false, startStage: 'expected' });
  const stages: StageRow[] = [];
  const waste: { actionId: string; volumeL: number; at: Date }[] = [];
  if (plan.chapter !== 'spoken-of')
    stages.push({ from: 'spoken-of', to: 'expected', at: laterBy(plan.createdAt, 20), byId: staff.deskId, actionId: null });
  let stage: Stage = 'expected';
  for (const action of actions) {
    const before = card.facts.numbers['wasteBookedL']?.value ?? 0;
    card = applyAction(card, action);
    const [misfit] = card.differences;
    if (misfit) throw new Error(`The demo's card refuses ${action.kind} ${action.step}: ${misfit.why}`);
    const volumeL = (card.facts.numbers['wasteBookedL']?.value ?? 0) - before;
    if (volumeL > 0) waste.push({ actionId: action.id, volumeL, at: new Date(action.readAt) });
    for (const to of stagePath(stage, card.stage)) {
      stages.push({ from: stage, to, at: new Date(action.readAt), byId: action.by, actionId: action.id });
      stage = to;
    }
  }
  return { card, stages, waste };
}

/** A job with its card played through up to its chapter. */
export async function writeJob(
  tx: Tx,
  random: Random,
  { plan, templateId, staff, variant }: { plan: JobPlan; templateId: string; staff: Staff; variant: string },
): Promise<WrittenJob> {
  const facts = factsOf(random, plan, variant);
  const actions = tellStory(
    { template: plan.template, chapter: plan.chapter, startsAt: plan.arrivesAt, facts },
    (kind, step, { value, readAt }) => ({
      id: nextId(random),
      card: plan.id,
      kind,
      step,
      value,
      readAt: readAt.toISOString(),
      by: kind === 'tick' && (step === 'keys-tagged' || step === 'keys-out') ? staff.deskId : staff.techId,
      byProof: 'session',
    }),
  );
  const { card, stages, waste } = play(plan, actions, staff);
  const keysOutAt = stages.find(({ to }) => to === 'keys-out')?.at ?? null;
  await tx.job.create({
    data: {
      id: plan.id,
      customerId: plan.car.customerId,
      vehicleId: plan.car.vehicleId,
      templateId,
      keyTag: plan.keyTag,
      complaint: plan.complaint,
      odometerKm: isReached(plan.chapter, 'standing') ? facts.odometerKm : null,
      arrivedAt: isReached(plan.chapter, 'standing') ? plan.arrivesAt : null,
      keysOutAt,
      createdAt: plan.createdAt,
      createdById: staff.deskId,
    },
  });
  await tx.jobAction.createMany({
    data: actions.map((action) => ({
      id: action.id,
      jobId: plan.id,
      kind: action.kind,
      step: action.step,
      value: action.value === null ? Prisma.JsonNull : (action.value as Prisma.InputJsonValue),
      readAt: new Date(action.readAt),
      receivedAt: new Date(action.readAt),
      byId: action.by,
      byProof: action.byProof,
    })),
  });
  await tx.jobStageChange.createMany({ data: stages.map((row) => ({ ...row, jobId: plan.id })) });
  if (waste.length > 0)
    await tx.wasteEntry.createMany({ data: waste.map((entry) => ({ ...entry, jobId: plan.id, direction: 'in', byId: staff.techId })) });
  await tx.jobDebt.createMany({
    data: card.debts.map((debt) => ({
      jobId: plan.id,
      kind: debt.kind,
      openedAt: new Date(debt.since),
      dueOn: debt.due === null ? null : new Date(debt.due),
      ...(debt.state === 'open' ? {} : { endedAt: laterBy(new Date(debt.since), 18 * 60), ending: 'done' }),
    })),
  });
  return { plan, card, keysOutAt };
}

/** The recorded yes of a job. */
export async function writeYes(tx: Tx, { plan, staff, gross }: { plan: JobPlan; staff: Staff; gross: string }): Promise<string> {
  const name =
    plan.template === 'thermostat'
      ? 'Thermostat with its seal, refill and proof'
      : plan.template === 'diagnosis'
        ? 'Find the fault: log from cold, checks'
        : 'Coolant drained, renewed and bled';
  const pack = await tx.workPackage.create({ data: { jobId: plan.id, position: 1, name, grossLow: gross, grossHigh: gross } });
  await tx.authorisation.create({
    data: {
      jobId: plan.id,
      saidBy: plan.car.customerName,
      saidAt: laterBy(plan.createdAt, 15),
      how: 'phone',
      ceilingGross: gross,
      recordedById: staff.deskId,
      recordedAt: laterBy(plan.createdAt, 15),
      packages: { create: { packageId: pack.id } },
    },
  });
  return pack.id;
}
