import { STAGE_WORDS, type Stage } from '#libs/checklist';
import { urls } from '../../web/urls.ts';
import type { OpenJob } from './bench.repository.ts';

export interface PartsHomeView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string }[] };
  jobs: { href: string; key: string; number: number; car: string; stage: string; lies: string; orderHref: string | undefined }[];
  hasJobs: boolean;
}

export function presentPartsHome(jobs: readonly OpenJob[], { mayOrder }: { mayOrder: boolean }): PartsHomeView {
  const count = jobs.length === 1 ? 'One job has' : `${jobs.length} jobs have`;
  return {
    title: 'Parts bench',
    head: {
      title: 'Parts bench',
      lead: jobs.length === 0 ? 'No job waits for its part to be settled.' : `${count} a part to settle.`,
      rest: '',
      actions: mayOrder
        ? [
            { href: urls.variants, label: 'Variants' },
            { href: urls.orders, label: 'Orders' },
          ]
        : [],
    },
    jobs: jobs.map((job) => ({
      href: urls.jobParts(job.id),
      key: job.keyTag === null ? '–' : String(job.keyTag),
      number: job.number,
      car: job.car,
      stage: STAGE_WORDS[job.stage as Stage] ?? job.stage,
      lies: job.units === 0 ? 'nothing ordered' : job.units === 1 ? 'one piece' : `${job.units} pieces`,
      orderHref: mayOrder && job.units === 0 ? urls.orderForJob(job.id) : undefined,
    })),
    hasJobs: jobs.length > 0,
  };
}
