import type { Outcome } from '#libs/coolant';
import { DomainError } from '../../platform/domain-error.ts';

/** The result, or the library's refusal as a problem that names the field and the figure that would be accepted. */
export function resultOf<T extends object>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome;
  const { code, kind, message, field, limit, requiredDrainL } = outcome.problem;
  throw new DomainError(kind, code, message, {
    ...(field === undefined ? {} : { errors: [{ field, message }] }),
    extra: { ...(limit === undefined ? {} : { limit }), ...(requiredDrainL === undefined ? {} : { requiredDrainL }) },
  });
}
