import { UNIT_PLACE_WORDS, type UnitPlace } from '#libs/unit-life';
import { DomainError } from '../../platform/domain-error.ts';

/** No supplier has this address. */
export const noSupplier = (): DomainError => new DomainError('not-found', 'no-supplier', 'This supplier is not on record.');

/** Another supplier has this name already. */
export const supplierTaken = (name: string): DomainError =>
  new DomainError('conflict', 'supplier-taken', `${name} is on record already.`, {
    errors: [{ field: 'name', message: `${name} is on record already: change that supplier’s terms instead.` }],
  });

/** Somebody changed it since the form was opened. */
export const changedMeanwhile = (what: string): DomainError =>
  new DomainError('stale', 'changed-meanwhile', `Somebody changed this ${what} in the meantime. Reload the page and change it again.`);

/** No variant has this address. */
export const noVariant = (): DomainError => new DomainError('not-found', 'no-variant', 'This variant is not on record.');

/** This supplier's part number is on record already. */
export const partNumberTaken = (partNumber: string): DomainError =>
  new DomainError('conflict', 'part-number-taken', `${partNumber} of this supplier is on record already.`, {
    errors: [{ field: 'partNumber', message: `${partNumber} of this supplier is on record already: add what you know to it there.` }],
  });

/** A choice of the form is not one of those offered. */
export const notOnTheList = (field: string): DomainError =>
  new DomainError('malformed', 'not-on-the-list', 'Choose one from the list.', {
    errors: [{ field, message: 'Choose one from the list.' }],
  });

/** What is said of a feature makes no sense for such a part. */
export const noSense = (field: string, message: string): DomainError =>
  new DomainError('malformed', 'makes-no-sense', message, { errors: [{ field, message }] });

/** The statement has been withdrawn already, or never was. */
export const withdrawnAlready = (): DomainError =>
  new DomainError('conflict', 'withdrawn-already', 'This statement has been withdrawn already.');

/** No job has this address. */
export const noJob = (): DomainError => new DomainError('not-found', 'no-job', 'This job is not on record.');

/** No purchase order has this address. */
export const noOrder = (): DomainError => new DomainError('not-found', 'no-order', 'This order is not on record.');

/** Nothing was ticked. */
export const nothingToOrder = (): DomainError =>
  new DomainError('malformed', 'nothing-to-order', 'Tick at least one variant to order.', {
    errors: [{ field: 'variants', message: 'Tick at least one variant to order.' }],
  });

/** The job is over: nothing more is bought for it. */
export const jobIsOver = (): DomainError =>
  new DomainError('impossible', 'job-is-over', 'The car of this job has gone: take a new complaint before buying anything for it.');

/** Somebody took it first. */
export const notInStock = ({ label, place }: { label: string; place: UnitPlace }): DomainError =>
  new DomainError('conflict', 'not-in-stock', `${label} is no longer in stock: it is at “${UNIT_PLACE_WORDS[place]}”.`);

/** The piece came earlier, or was called off. */
export const notExpected = ({ label, place }: { label: string; place: UnitPlace }): DomainError => {
  const words = `${label} is not on its way: it is at “${UNIT_PLACE_WORDS[place]}”.`;
  return new DomainError('conflict', 'not-expected', words, { errors: [{ field: 'code', message: words }] });
};
