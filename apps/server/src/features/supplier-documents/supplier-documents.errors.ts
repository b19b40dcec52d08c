import { DomainError, type FieldError } from '../../platform/domain-error.ts';

/** No document has this address. */
export const noDocument = (): DomainError => new DomainError('not-found', 'no-document', 'This document is not on record.');

/** No upload has this address. */
export const noImport = (): DomainError => new DomainError('not-found', 'no-import', 'This upload is not on record.');

/** The supplier of the form is none of ours. */
export const noSuchSupplier = (): DomainError =>
  new DomainError('malformed', 'no-supplier', 'Choose the supplier.', {
    errors: [{ field: 'supplierId', message: 'Choose the supplier.' }],
  });

/** The same paper is on record. */
export const documentTaken = (number: string): DomainError => {
  const message = `${number} of this supplier is on record already: look at it there, or withdraw it first.`;
  return new DomainError('conflict', 'document-taken', message, { errors: [{ field: 'number', message }] });
};

/** What was typed can't be read. */
export const unreadable = (errors: readonly FieldError[]): DomainError =>
  new DomainError('malformed', 'unreadable-document', 'Some of it can’t be read.', { errors });

/** The upload holds no line that can be taken in. */
export const nothingToTakeIn = (): DomainError =>
  new DomainError('impossible', 'nothing-to-take-in', 'No line of this file can be taken in as it is read now: say how to read it.');

/** The file is no text of lines. */
export const noLines = (message: string): DomainError =>
  new DomainError('malformed', 'no-lines', message, { errors: [{ field: 'file', message }] });

/** Somebody has decided on it in the meantime. */
export const decidedMeanwhile = (): DomainError =>
  new DomainError('conflict', 'decided-meanwhile', 'Somebody has decided on this in the meantime. Look at it again.');

/** The document was withdrawn in the meantime. */
export const withdrawnMeanwhile = (): DomainError =>
  new DomainError('conflict', 'withdrawn-meanwhile', 'This document is withdrawn: nothing on it can be decided any more.');

/** The line has no piece left that another unit could take, or the unit has its line. */
export const laidAlready = (): DomainError =>
  new DomainError(
    'conflict',
    'laid-already',
    'The line says no more pieces, or this piece has its line already: take the other one back first.',
  );
