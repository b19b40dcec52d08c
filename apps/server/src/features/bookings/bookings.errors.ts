import { DomainError } from '../../platform/domain-error.ts';

const onField = (kind: 'conflict' | 'impossible' | 'malformed', code: string, field: string, message: string): DomainError =>
  new DomainError(kind, code, message, { errors: [{ field, message }] });

/** No job has this address. */
export const noJob = (): DomainError => new DomainError('not-found', 'no-job', 'This job is not on record.');

/** Another car has this tag. */
export const tagTaken = (tag: number): DomainError =>
  onField('conflict', 'tag-taken', 'keyTag', `Key tag ${tag} is on another car. Take the next free one.`);

/** The place or the person is taken then. */
export const placeTaken = (place: string): DomainError =>
  onField('conflict', 'place-taken', 'from', `${place} is taken in that time. Choose another time or place.`);
export const handsTaken = (): DomainError =>
  onField('conflict', 'hands-taken', 'from', 'That person has another job in that time. Choose another time or another person.');

/** The clocks skip this time, or the day does not exist. */
export const noSuchTime = (field: string): DomainError =>
  onField('malformed', 'no-such-time', field, 'This day and time do not exist. Check the date.');

/** No such template, place or person. */
export const notOnTheList = (field: string): DomainError => onField('malformed', 'not-on-the-list', field, 'Choose one from the list.');

/** The booking was called off before. */
export const calledOffAlready = (): DomainError =>
  new DomainError('conflict', 'called-off-already', 'This booking was called off already.');

/** The car came in before. */
export const hereAlready = (): DomainError =>
  new DomainError('conflict', 'here-already', 'This car is here already, or has gone. Look at the job again.');

/** The job is over. */
export const jobIsOver = (): DomainError =>
  new DomainError('impossible', 'job-is-over', 'The car of this job has gone: take a new complaint to book it again.');
