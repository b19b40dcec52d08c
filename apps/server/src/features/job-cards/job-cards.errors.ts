import { STAGE_WORDS, type Stage } from '#libs/checklist';
import { DomainError, type FieldError } from '../../platform/domain-error.ts';

/** No job has this address. */
export const noCard = (): DomainError => new DomainError('not-found', 'no-card', 'This job card is not on record.');

const word = (stage: string): string => STAGE_WORDS[stage as Stage] ?? stage;

/** The stage does not lead there from where the job is. */
export const noSuchStep = (from: string, to: string): DomainError =>
  new DomainError(
    'impossible',
    'no-such-step',
    `The job is at “${word(from)}” now, so it can’t become “${word(to)}”. Look at the job again.`,
  );

/** What a form asks for does not fit the card as it stands: nothing was written, and this says why. */
export const didNotFit = (why: string, field = ''): DomainError =>
  new DomainError('conflict', 'did-not-fit', why, { errors: [{ field, message: why }] });

/** The debt has ended already, or belongs to another job. */
export const endedAlready = (): DomainError => new DomainError('conflict', 'ended-already', 'This has been settled already.');

/** Letting go of what is owed needs a reason. */
export const whyLetGo = (): DomainError =>
  new DomainError('malformed', 'why-let-go', 'Say why this is let go.', { errors: [{ field: 'why', message: 'Say why this is let go.' }] });

/** The address or the form names a step that this card's template does not have. */
export const unknownStep = (): DomainError => new DomainError('not-found', 'unknown-step', 'This card has no such step.');

/** Something in the form can't be read, or is missing. */
export const badForm = (errors: readonly FieldError[]): DomainError =>
  new DomainError('malformed', 'fields', errors.length === 1 ? 'One answer needs another look.' : 'Some answers need another look.', {
    errors,
  });

/** A debt of the job was to be let go by somebody else than the owner. */
export const onlyTheOwnerLetsGo = (): DomainError =>
  new DomainError('forbidden', 'only-the-owner', 'Letting go of what is owed is the owner’s, with a reason.');

/** An action of this id is on another card: one of the two tablets made it up again. */
export const onAnotherCard = (id: string): DomainError =>
  new DomainError('conflict', 'on-another-card', `Action ${id} is on another job’s card already: give each action an id of its own.`);

/** Two actions of one device under the same number. */
export const deviceOrderTaken = (): DomainError =>
  new DomainError(
    'conflict',
    'device-order',
    'One of these numbers of the device is on another of its actions: count on from the last one.',
  );

/** Said to be done, and the books say otherwise. */
export const stillOwed = (): DomainError =>
  new DomainError('impossible', 'still-owed', 'The books still show it open: book what settles it, or let it go with a reason.');
