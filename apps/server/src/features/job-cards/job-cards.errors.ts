import { STAGE_WORDS, type Stage } from '#libs/checklist';
import { DomainError } from '../../platform/domain-error.ts';

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

/** The action did not fit the card: it is kept among the differences, and this says why it did not count. */
export const didNotFit = (why: string): DomainError => new DomainError('conflict', 'did-not-fit', why);

/** The debt has ended already, or belongs to another job. */
export const endedAlready = (): DomainError => new DomainError('conflict', 'ended-already', 'This has been settled already.');

/** Letting go of what is owed needs a reason. */
export const whyLetGo = (): DomainError =>
  new DomainError('malformed', 'why-let-go', 'Say why this is let go.', { errors: [{ field: 'why', message: 'Say why this is let go.' }] });
