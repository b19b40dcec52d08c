import { AsyncLocalStorage } from 'node:async_hooks';
import type { Role } from './role.ts';

export type { Role } from './role.ts';

/** The person behind a request. */
export interface SignedIn {
  staffId: string;
  name: string;
  displayName: string;
  role: Role;
  units: UnitChoice;
  tokenHash: string;
}

export interface UnitChoice {
  temperature: 'C' | 'F';
  volume: 'L' | 'qt';
  pressure: 'kPa' | 'psi';
  torque: 'Nm' | 'lbf-ft';
}

/** One state-changing request, told apart from its repeats. */
export interface RequestKey {
  scope: string;
  key: string;
  route: string;
  bodyHash: string;
}

export interface RequestContext {
  staff: SignedIn | undefined;
  requestKey: RequestKey | undefined;
}

/** Carries who asks and with which key through one request, so that no service passes them by hand. */
export const requestContext = new AsyncLocalStorage<RequestContext>();

export function currentStaff(): SignedIn {
  const staff = requestContext.getStore()?.staff;
  if (!staff) throw new Error('This needs a signed-in person: the route must not be public');
  return staff;
}
