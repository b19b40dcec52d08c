import { DomainError } from '../../platform/domain-error.ts';

/** No unit has this address. */
export const noUnit = (): DomainError => new DomainError('not-found', 'no-unit', 'This piece is not on record.');

/** No supplier has this address. */
export const noSupplier = (): DomainError => new DomainError('not-found', 'no-supplier', 'This supplier is not on record.');

/** No piece has the typed code. */
export const unknownCode = (message: string): DomainError =>
  new DomainError('malformed', 'unknown-code', message, { errors: [{ field: 'code', message }] });

/** Somebody else moved it first, or the page was old. */
export const movedMeanwhile = (code: string): DomainError =>
  new DomainError('conflict', 'moved-meanwhile', `${code} has been moved in the meantime. Look where it is now and decide again.`);

/** The move is none that a unit makes, its evidence is missing, or an end is entered while money is open. */
export const refusedMove = (code: string, why: string, openNet: string): DomainError =>
  new DomainError('impossible', 'refused-move', `${code}: ${why}`, { extra: { openNet } });

/** The same charge under the same reference is on the unit already. */
export const chargedAlready = (code: string): DomainError =>
  new DomainError('conflict', 'charged-already', `This charge is on ${code} already.`);

/** Nothing is open, so there is nothing to give up. */
export const nothingOpen = (code: string): DomainError =>
  new DomainError('impossible', 'nothing-open', `Nothing is open for ${code}: there is no loss to accept.`);

/** The supplier will not take it back. */
export const cannotGoBack = (code: string, why: string): DomainError =>
  new DomainError('impossible', 'cannot-go-back', `${code} can’t go back. ${why}`);

/** An entry that is not on this unit, or was taken back before. */
export const noSuchEntry = (): DomainError =>
  new DomainError(
    'conflict',
    'no-such-entry',
    'There is no such entry on this piece that can be taken back, or it was taken back already.',
  );

/** An amount of nothing says nothing. */
export const noAmount = (): DomainError =>
  new DomainError('malformed', 'no-amount', 'The amount has to be more than nothing.', {
    errors: [{ field: 'amount', message: 'The amount has to be more than nothing.' }],
  });

/** Opening the box gives up the right of return: that has to be meant. */
export const openedForGood = (supplier: string): DomainError =>
  new DomainError('malformed', 'opened-for-good', `${supplier} takes back unopened boxes only: say that you mean to open it.`, {
    errors: [{ field: 'sure', message: `${supplier} takes back unopened boxes only: an opened one is ours to keep.` }],
  });

/** No return note has this address. */
export const noNote = (): DomainError => new DomainError('not-found', 'no-note', 'This return note is not on record.');

/** The note has been signed already. */
export const leftAlready = (): DomainError =>
  new DomainError('conflict', 'left-already', 'This return note has left already: look at what it says now.');

/** None of the pieces waits here to go back to this supplier. */
export const nothingLeaves = (): DomainError =>
  new DomainError('conflict', 'nothing-leaves', 'Of these pieces not all wait here to go back any more: tick those that do.', {
    errors: [{ field: 'units', message: 'Tick pieces that wait here to go back.' }],
  });

/** No piece here has a label of its own. */
export const noLabels = (): DomainError =>
  new DomainError(
    'impossible',
    'no-labels',
    'There is no piece to label: none can go back, and none costs as much as the workshop has set for a label.',
  );
