import { STAGE_WORDS } from '#libs/checklist';
import type { FormState } from '../../../platform/pages/form-state.ts';
import { urls } from '../../../web/urls.ts';
import type { OpenCard } from '../../job-cards/job-cards.service.ts';
import { benchTabs } from '../bench-tabs.ts';
import { presentRefill, type Refill, type RefillView } from '../refill/present-refill.ts';
import { accountOfCard } from './account-of-card.ts';
import { compareAfterRun } from './compare-after-run.ts';
import type { JobFacts } from './known-figures.ts';
import { presentAccount } from './present-account.ts';
import { type AfterRunView, presentAfterRun } from './present-after-run.ts';
import { type MemoryView, presentMemory } from './present-memory.ts';

export interface JobBenchView extends RefillView {
  readonly job: {
    readonly card: string;
    readonly slip: string;
    readonly facts: string;
    readonly here: string;
    readonly memory: MemoryView;
    readonly account: ReturnType<typeof presentAccount>;
    readonly afterRun: AfterRunView;
  };
}

/** The bench opened for a job. */
export function presentJobBench(
  refill: Refill,
  { row, job, forms }: { row: OpenCard['row']; job: JobFacts; forms: { fact: FormState; withdraw: FormState } },
): JobBenchView {
  const { context, form, answer, address } = refill;
  const { id, number, keyTag, vehicle } = row;
  const shrinkL = answer.kind === 'ready' ? answer.recipe.shrinkL : 0;
  const account = accountOfCard(job.state, { capacityL: form.figures['holds'], shrinkL, workshop: context.workshop });
  const run = compareAfterRun(job.state, form, context.products);
  const base = presentRefill(refill);
  const query = address.query === '' ? '' : `?${address.query}`;
  return {
    ...base,
    title: `Coolant, job ${number}`,
    tabs: benchTabs('job'),
    head: {
      ...base.head,
      lead: `${vehicle.make} ${vehicle.model}, ${vehicle.registration}: ${STAGE_WORDS[job.state.stage].toLowerCase()}.`,
      rest: `Job ${number}. The card’s figures and the car’s memory stand in the form; what you change here is reckoned with, not recorded.`,
      actions: [
        { href: urls.card(id), label: 'Job card' },
        { href: `${urls.jobCoolantSlip(id)}${query}`, label: 'Slip for the bay' },
      ],
      ...(keyTag === null ? {} : { keyTag: { key: String(keyTag), href: urls.card(id) } }),
    },
    job: {
      card: urls.card(id),
      slip: `${urls.jobCoolantSlip(id)}${query}`,
      facts: urls.jobCoolantFacts(id),
      here: `${address.path}${query}`,
      memory: presentMemory(job.facts, { jobId: id, context, address, forms }),
      account: presentAccount(account, { state: job.state, form, shrinkL, context }),
      afterRun: presentAfterRun(run, { id, number, facts: job.facts }, context),
    },
  };
}
