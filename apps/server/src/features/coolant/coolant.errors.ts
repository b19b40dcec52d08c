import { DomainError } from '../../platform/domain-error.ts';

/** The bench has no calculator of this name. */
export const noTool = (): DomainError =>
  new DomainError('not-found', 'no-tool', 'Nothing of this name lies on the coolant bench. Choose from its list.');

/** What was stated about the car can't be read or can't be. */
export const badFact = (field: string, message: string): DomainError =>
  new DomainError('malformed', 'bad-fact', message, { errors: [{ field, message }] });

/** It was withdrawn already, or belongs to another car. */
export const noFact = (): DomainError =>
  new DomainError('conflict', 'no-fact', 'This no longer stands on record for the car. Look at what it says now.');

/** There is nothing to print while the refill can't be reckoned. */
export const nothingToPour = (why: string): DomainError => new DomainError('impossible', 'nothing-to-pour', why);
