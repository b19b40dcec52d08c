import { DomainError } from '../../platform/domain-error.ts';

/** The code was mistyped, used already, or is older than a quarter of an hour. */
export const wrongCode = (): DomainError => {
  const message = 'This code opens nothing: it is mistyped, used, or older than 15 minutes. Have a new one made at Bays, Tablets.';
  return new DomainError('impossible', 'wrong-code', message, { errors: [{ field: 'code', message }] });
};

/** Another tablet in use has this name. */
export const tabletNameTaken = (name: string): DomainError => {
  const message = `A tablet called ${name} is in use: give this one another name.`;
  return new DomainError('conflict', 'tablet-name-taken', message, { errors: [{ field: 'name', message }] });
};

/** No tablet, or nothing of a tablet's, has this address. */
export const noTablet = (): DomainError => new DomainError('not-found', 'no-such-tablet', 'This tablet is not on record.');

/** The PIN is not that person's, or they have set none. */
export const wrongPin = (): DomainError =>
  new DomainError('not-signed-in', 'wrong-pin', 'That is not this person’s PIN. Each sets their own at Your secret.');

/** The envelope of what the tablet sent can't be read at all. */
export const badBatch = (message: string): DomainError =>
  new DomainError('malformed', 'fields', 'This is no list of actions.', { errors: [{ field: 'actions', message }] });

/** Whose it is said to be is not on record. */
export const noSuchPerson = (): DomainError =>
  new DomainError('malformed', 'fields', 'Nobody of this id works here.', {
    errors: [{ field: 'by', message: 'Nobody of this id works here.' }],
  });
