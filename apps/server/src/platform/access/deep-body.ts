import { DomainError } from '../domain-error.ts';

/** No body of ours goes deeper than a list of readings in a part of a call; libraries that walk a body call themselves. */
const MOST_LEVELS = 20;

/** @throws too-deep, before anything walks the body by calling itself. */
export function refuseDeepBody(body: unknown): void {
  let level = [body];
  for (let depth = 0; level.length > 0; depth += 1) {
    if (depth > MOST_LEVELS)
      throw new DomainError('malformed', 'too-deep', `This goes deeper than ${MOST_LEVELS} levels: send what is asked for.`);
    level = level.flatMap((value) => (typeof value === 'object' && value !== null ? (Object.values(value) as unknown[]) : []));
  }
}
