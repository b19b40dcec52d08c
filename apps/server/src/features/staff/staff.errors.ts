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

/** Nobody has this account. */
export const noPerson = (): DomainError => new DomainError('not-found', 'no-person', 'Nobody here has this account. Look again at People.');

/** Nobody closes their own account. */
export const ownAccount = (): DomainError =>
  new DomainError('impossible', 'own-account', 'You can’t close your own account: another owner can.');

/** A workshop without an owner could be changed by nobody. */
export const lastOwner = (): DomainError =>
  new DomainError('impossible', 'last-owner', 'This is the last owner’s account: open or add another owner first.');

/** The person's secret so far was mistyped. */
export const wrongOldSecret = (): DomainError =>
  new DomainError('impossible', 'wrong-old-secret', 'That is not your secret so far.', {
    errors: [{ field: 'oldSecret', message: 'That is not your secret so far. Capitals count.' }],
  });

/** One's own secret is changed by whoever knows it. */
export const ownSecret = (): DomainError =>
  new DomainError('impossible', 'own-secret', 'Your own secret you change at Your secret, where you type the old one too.');
