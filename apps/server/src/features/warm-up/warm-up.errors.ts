import type { Ask, Understood } from '#libs/warm-up';
import { DomainError, type FieldError } from '../../platform/domain-error.ts';

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
