import { DomainError } from '../../platform/domain-error.ts';

const onField = (kind: 'malformed' | 'impossible' | 'conflict', code: string, field: string, message: string): DomainError =>
  new DomainError(kind, code, message, { errors: [{ field, message }] });

/** No job has this address. */
export const noJob = (): DomainError => new DomainError('not-found', 'no-job', 'This job is not on record.');

/** The car has gone: its part is what it is. */
export const jobIsOver = (): DomainError =>
  new DomainError('impossible', 'job-is-over', 'The car of this job has gone: nothing more is read or chosen for it.');

/** The family has no such feature. */
export const noFeature = (): DomainError => onField('malformed', 'no-feature', 'feature', 'Choose what was read from the list.');

/** A reading outside any sense. */
export const senselessReading = (message: string): DomainError => onField('impossible', 'senseless-reading', 'value', message);

/** The instrument does not read this. */
export const wrongInstrument = (): DomainError =>
  onField('malformed', 'wrong-instrument', 'instrument', 'Choose an instrument that can read this.');

/** Could not be read, and nobody said why. */
export const whyUnread = (): DomainError => onField('malformed', 'why-unread', 'why', 'Say in a few words why it could not be read.');

/** The variant is no candidate of this job. */
export const noCandidate = (): DomainError =>
  onField('malformed', 'no-candidate', 'variantId', 'Choose one of the candidates on the bench.');

/** A sealing feature speaks against it: no guess and no habit overrides that. */
export const excluded = (partNumber: string): DomainError =>
  onField(
    'impossible',
    'excluded',
    'variantId',
    `${partNumber} does not seal here: a sealing feature was read differently. Take the reading back if it was wrong.`,
  );

/** The reading has been taken back already. */
export const takenBackAlready = (): DomainError =>
  new DomainError('conflict', 'taken-back-already', 'This reading has been taken back already.');
