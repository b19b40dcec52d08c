import { DomainError } from '../../platform/domain-error.ts';

/** A yes to nothing. */
export const nothingSaidYesTo = (): DomainError =>
  new DomainError('malformed', 'nothing-said-yes-to', 'Tick at least one package that the customer said yes to.', {
    errors: [{ field: 'yes1', message: 'Tick at least one package that the customer said yes to.' }],
  });

/** A ticked package without words or price. */
export const packageIncomplete = (field: string, message: string): DomainError =>
  new DomainError('malformed', 'package-incomplete', message, { errors: [{ field, message }] });

/** The ceiling is below what was said yes to. */
export const ceilingTooLow = (sum: string): DomainError => {
  const message = `The packages come to ${sum} with tax: the ceiling can’t be below that.`;
  return new DomainError('impossible', 'ceiling-too-low', message, { errors: [{ field: 'ceiling', message }], extra: { atLeast: sum } });
};

/** The yes was said in the future. */
export const saidInFuture = (): DomainError =>
  new DomainError('malformed', 'said-in-future', 'This is in the future: give the time at which it was said.', {
    errors: [{ field: 'saidTime', message: 'This is in the future: give the time at which it was said.' }],
  });

/** The day and time do not exist. */
export const noSuchTime = (): DomainError =>
  new DomainError('malformed', 'no-such-time', 'This day and time do not exist. Check the date.', {
    errors: [{ field: 'saidDay', message: 'This day and time do not exist. Check the date.' }],
  });

/** No job has this address. */
export const noJob = (): DomainError => new DomainError('not-found', 'no-job', 'This job is not on record.');
