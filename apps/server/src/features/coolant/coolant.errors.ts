import { DomainError } from '../../platform/domain-error.ts';

/** The bench has no calculator of this name. */
export const noTool = (): DomainError =>
  new DomainError('not-found', 'no-tool', 'Nothing of this name lies on the coolant bench. Choose from its list.');
