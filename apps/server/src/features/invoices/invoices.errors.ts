import type { FieldError as LineError, MissingContent } from '#libs/invoicing';
import { DomainError } from '../../platform/domain-error.ts';

/** No job has this address. */
export const noJob = (): DomainError => new DomainError('not-found', 'no-job', 'This job is not on record.');

/** No invoice has this address. */
export const noInvoice = (): DomainError => new DomainError('not-found', 'no-invoice', 'This invoice is not on record.');

/** The job has its invoice. */
export const issuedAlready = (number: string): DomainError =>
  new DomainError('conflict', 'issued-already', `Invoice ${number} is issued for this job. A credit note corrects it.`);

/** Nothing that was said yes to can be billed. */
export const nothingToBill = (): DomainError =>
  new DomainError('impossible', 'nothing-to-bill', 'There is nothing to bill: no line belongs to a package that the customer said yes to.');

/** The work is not done. */
export const notReady = (): DomainError =>
  new DomainError(
    'impossible',
    'not-ready-to-bill',
    'The work is not done yet: an invoice is issued once the engine has run hot, or the car has left.',
  );

/** The job is free of charge. */
export const noCharge = (why: string): DomainError => new DomainError('impossible', 'no-charge', `This job is free of charge: ${why}.`);

/** More than the customer said yes to. */
export const aboveCeiling = (ceiling: string, sum: string): DomainError =>
  new DomainError(
    'impossible',
    'above-ceiling',
    `The customer said yes to at most ${ceiling} with tax, and this comes to ${sum}: record a new yes, or take something off.`,
    {
      extra: { ceiling, sum },
    },
  );

/** Less than nothing. */
export const belowZero = (sum: string): DomainError =>
  new DomainError(
    'impossible',
    'below-zero',
    `The lines come to ${sum}: an invoice can’t be below zero. Check the discounts, or give back what was paid ahead beyond it.`,
    {
      extra: { sum },
    },
  );

/** A deposit is more than the work at its rate. */
export const depositBeyondWork = (words: string): DomainError => new DomainError('impossible', 'deposit-beyond-work', words);

/** It was taken back before. */
export const takenBackAlready = (): DomainError =>
  new DomainError('conflict', 'taken-back-already', 'This is no longer on the draft. Look at it again.');

/** A sum that no workshop writes. */
export const beyondAnySum = (): DomainError =>
  new DomainError('impossible', 'beyond-any-sum', 'The lines come to more than 99,999,999.99: check quantity and price.', {
    errors: [{ field: 'quantity', message: 'The lines come to more than 99,999,999.99: check quantity and price.' }],
  });

/** There is nothing to give back, or not so much. */
export const tooMuchBack = (most: string): DomainError =>
  new DomainError('impossible', 'too-much-back', `At most ${most} can go back.`, {
    errors: [{ field: 'amount', message: `At most ${most} can go back.` }],
    extra: { most },
  });

/** Money before the work has no place once the invoice is there. */
export const payOnInvoice = (number: string): DomainError =>
  new DomainError('conflict', 'pay-on-invoice', `Invoice ${number} is issued: take the payment there.`);

/** Somebody else closed a count over the same payments. */
export const countedMeanwhile = (): DomainError =>
  new DomainError('stale', 'counted-meanwhile', 'Somebody closed a count in between. Look at the page again and count what is left.');

/** No payment has this address. */
export const noPayment = (): DomainError => new DomainError('not-found', 'no-payment', 'This payment is not on record.');

/** Nothing of the document is left to credit. */
export const nothingToCredit = (number: string): DomainError =>
  new DomainError('conflict', 'nothing-to-credit', `Nothing of ${number} is left to credit.`);

/** A credit note can't be credited. */
export const notOnceMore = (): DomainError =>
  new DomainError('impossible', 'credits-itself', 'A credit note can’t be credited: issue a new invoice instead.');

/** The deposit was taken off an invoice that stands. */
export const depositTaken = (number: string): DomainError =>
  new DomainError('conflict', 'deposit-taken', `Invoice ${number} has taken this deposit off: credit that one first.`);

/** What was chosen can't be credited. */
export const badCredit = (errors: readonly LineError[]): DomainError =>
  new DomainError('impossible', 'bad-credit', 'This can’t be credited as it is.', { errors });

/** Money is not taken on a credit note. */
export const notOnCreditNote = (): DomainError =>
  new DomainError('impossible', 'not-on-credit-note', 'A credit note is not paid to us: take the payment on an invoice.');

/** The law wants more on the document. */
export const contentsMissing = (missing: readonly MissingContent[]): DomainError =>
  new DomainError('impossible', 'contents-missing', 'The invoice can’t be issued yet: something that must be on it is missing.', {
    errors: missing.map(({ what, where }) => ({ field: '', message: `${what} Enter it at: ${where}.` })),
  });

/** EN 16931 wants more than the frozen record holds: the page stands, the structured form can't be made. */
export const notStructured = (problems: readonly MissingContent[]): DomainError =>
  new DomainError(
    'impossible',
    'not-structured',
    'This document can’t be sent as a structured invoice: something that EN 16931 wants is not on it.',
    {
      errors: problems.map(({ field, what, basis }) => ({ field, message: `${what} (${basis}).` })),
    },
  );

/** The draft itself can't be. */
export const badDraft = (errors: readonly LineError[]): DomainError =>
  new DomainError('impossible', 'bad-draft', 'The draft can’t be computed yet.', {
    errors: errors.map(({ message }) => ({ field: '', message })),
  });

/** A figure of the line can't be. */
export const badFigure = (field: string, message: string): DomainError =>
  new DomainError('malformed', 'bad-figure', message, { errors: [{ field, message }] });

/** Somebody else saved the settings first. */
export const settingsChanged = (): DomainError =>
  new DomainError('stale', 'changed-meanwhile', 'Somebody changed the settings in between. Look at them again.');

/** There is no work of this kind. */
export const noSuchWork = (): DomainError =>
  new DomainError('malformed', 'no-such-work', 'Choose the work from the list.', {
    errors: [{ field: 'templateKey', message: 'Choose the work from the list.' }],
  });

/** More than is owed. */
export const tooMuchPaid = (open: string): DomainError =>
  new DomainError('impossible', 'too-much-paid', `Only ${open} is still open on this invoice.`, {
    errors: [{ field: 'amount', message: `Only ${open} is still open on this invoice.` }],
    extra: { open },
  });

/** The record in the database no longer proves its own sums. */
export const damagedRecord = (message: string): Error => new Error(message);
