import type { Role } from '../../platform/role.ts';

export interface TabletPerson {
  id: string;
  displayName: string;
  role: Role;
  hasPin: boolean;
}

/** Numbers of a tablet's own count that never arrived. */
export interface MissingRun {
  tabletId: string;
  from: number;
  to: number;
}

/** What a tablet works with while the server is away, beside its cards. */
export interface TabletFacts {
  tablet: { id: string; name: string };
  /** The server's clock, so that a tablet whose own is wrong knows it. */
  now: string;
  timeZone: string;
  onePersonSite: boolean;
  people: TabletPerson[];
  /** The highest number of this tablet's that has arrived, and those before it that have not. */
  lastSeq: number;
  missing: MissingRun[];
}
