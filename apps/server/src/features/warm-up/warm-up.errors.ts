import type { Ask, Understood } from '#libs/warm-up';
import { DomainError, type FieldError } from '../../platform/domain-error.ts';
import { fieldOfAsk } from './drafts/answer-fields.ts';

/** A body of the analysis that can't be read as one. */
export const badRequest = (errors: readonly FieldError[]): DomainError =>
  new DomainError('malformed', 'bad-warm-up', 'This can’t be read as a warm-up log yet.', { errors });

/** More readings than are taken at once. */
export const tooManySamples = (message: string): DomainError =>
  new DomainError('too-large', 'too-many-samples', message, { errors: [{ field: 'samples', message }] });

/** A file that is no log: nothing to ask about it. */
export const noLog = (problem: string, understood: Understood): DomainError =>
  new DomainError('malformed', 'no-log', problem, { errors: [{ field: 'file', message: problem }], extra: { understood } });

/** A log that does not say something which only a person can: its unit, its column. Answered by the fields that the asks name. */
export const logAsks = (problem: string, { asks, understood }: { asks: readonly Ask[]; understood: Understood }): DomainError =>
  new DomainError('impossible', 'log-asks', `${problem} ${asks.map(({ question }) => question).join(' ')}`, {
    errors: asks.map(({ field, question, options }) => ({
      field: field.split('.')[0] ?? field,
      message: options.length === 0 ? question : `${question} One of: ${options.slice(0, 20).join(', ')}.`,
    })),
    extra: { asks, understood },
  });

/** A form about a log with something to change. */
export const badLogForm = (errors: readonly FieldError[]): DomainError =>
  new DomainError('malformed', 'bad-log-form', 'Something about this log needs another look.', { errors });

/** A draft that can't be kept while it leaves questions open. */
export const notReadYet = (source: string, { problem, asks }: { problem: string; asks: readonly Ask[] }): DomainError =>
  new DomainError('impossible', 'not-read-yet', problem, {
    errors:
      asks.length === 0
        ? [{ field: source === 'typed' ? 'readings' : '', message: problem }]
        : asks.map(({ field, question }) => ({ field: fieldOfAsk(field), message: question })),
  });

export const noDraft = (): DomainError =>
  new DomainError('not-found', 'no-draft', 'This log no longer waits: it was kept or thrown away. Look at its job.');

export const noRunUpJob = (): DomainError => new DomainError('not-found', 'no-job', 'There is no such job.');

export const noWarmUpLog = (): DomainError => new DomainError('not-found', 'no-log', 'There is no such log.');

export const withdrawnAlready = (): DomainError =>
  new DomainError('conflict', 'log-withdrawn', 'This log was taken out of the account before.');

export const noProofYet = (): DomainError =>
  new DomainError('not-found', 'no-proof', 'There is no proof sheet yet: it is made with the first log of the job.');
