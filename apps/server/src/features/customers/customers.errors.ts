import { DomainError } from '../../platform/domain-error.ts';

/** No customer has this address. */
export const noCustomer = (): DomainError =>
  new DomainError('not-found', 'no-customer', 'This customer is not on record. Search again at the Counter.');

/** No vehicle has this address. */
export const noVehicle = (): DomainError =>
  new DomainError('not-found', 'no-vehicle', 'This vehicle is not on record. Search again at the Counter.');

/** Somebody else saved in between. */
export const changedMeanwhile = (what: string): DomainError =>
  new DomainError(
    'stale',
    'changed-meanwhile',
    `Somebody changed this ${what} while you had it open. Look at what it says now, then make your change again.`,
  );

/** A registration belongs to one vehicle. */
export const registrationTaken = (registration: string): DomainError =>
  new DomainError('conflict', 'registration-taken', `${registration} is on record already.`, {
    errors: [{ field: 'registration', message: `${registration} is on record already: search for it instead of adding it again.` }],
  });

/** The VIN can't be right. */
export const badVin = (message: string): DomainError =>
  new DomainError('impossible', 'bad-vin', message, { errors: [{ field: 'vin', message }] });
