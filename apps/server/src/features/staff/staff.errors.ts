import { DomainError } from '../../platform/domain-error.ts';

/** Name or secret is wrong: which of the two is not said. */
export const wrongSecret = (): DomainError =>
  new DomainError(
    'not-signed-in',
    'wrong-secret',
    'That name and secret do not belong together. Check both; capitals in the secret count.',
  );

/** Too many failures by this name or from this address. */
export const tooManyTries = (minutes: number): DomainError =>
  new DomainError('too-often', 'too-many-tries', `Too many wrong tries. Wait ${minutes} minutes, or ask the owner.`);

/** Somebody already owns this workshop. */
export const alreadyOwned = (): DomainError =>
  new DomainError('conflict', 'already-owned', 'This workshop has its owner already. Sign in, or ask the owner for an account.');

/** Somebody types that at the door already. */
export const nameTaken = (name: string): DomainError =>
  new DomainError('conflict', 'name-taken', `${name} is taken.`, {
    errors: [{ field: 'name', message: `Somebody here types ${name} already: choose another.` }],
  });

/** Nobody closes their own account. */
export const lastOwner = (): DomainError =>
  new DomainError('impossible', 'own-account', 'You can’t close your own account: another owner can.');
