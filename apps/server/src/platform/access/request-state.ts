import type { FastifyRequest } from 'fastify';
import type { Device } from './devices.ts';
import type { OpenSession } from './sessions.ts';

/** What the hooks learn about a request before Nest sees it. */
export interface RequestState {
  session: OpenSession | undefined;
  /** On calls for tablets. */
  tablet?: Device;
  /** The secret that forms of this visitor are checked against: the session's, or the door's. */
  csrfSecret: string;
  /** Taken out of a form's body before validation. */
  form: FormMarks | undefined;
  /** The page shows what its form was refused for in its own place. */
  isRefusalShown?: boolean;
}

/** The hidden fields of every form. */
export interface FormMarks {
  csrf: unknown;
  key: string | undefined;
  /** The page that the form stood on. */
  page: string | undefined;
  /** Which form of that page. */
  name: string | undefined;
  /** Sent again from where it was kept after a session's end. */
  isKept: boolean;
}

const states = new WeakMap<object, RequestState>();

export function setRequestState(request: FastifyRequest, state: RequestState): void {
  states.set(request.raw, state);
}

export function requestState(request: FastifyRequest): RequestState | undefined {
  return states.get(request.raw);
}

/** The tablet that calls: only where the route is for tablets. */
export function currentTablet(request: FastifyRequest): Device {
  const tablet = requestState(request)?.tablet;
  if (!tablet) throw new Error('This needs a tablet: the route must say that it is for tablets only');
  return tablet;
}
