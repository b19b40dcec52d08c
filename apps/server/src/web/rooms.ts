import type { Role } from '../platform/request-context.ts';
import { urls } from './urls.ts';

export interface Room {
  href: string;
  label: string;
}

const ALL: readonly (Room & { roles: readonly Role[] })[] = [
  { href: urls.counter, label: 'Counter', roles: ['desk', 'owner'] },
  { href: urls.bays, label: 'Bays', roles: ['desk', 'technician', 'owner'] },
  { href: urls.partsBench, label: 'Parts bench', roles: ['desk', 'technician', 'owner'] },
  { href: urls.coolantBench, label: 'Coolant bench', roles: ['desk', 'technician', 'owner'] },
  { href: urls.runUp, label: 'Run-up', roles: ['desk', 'technician', 'owner'] },
  { href: urls.returnsShelf, label: 'Returns shelf', roles: ['desk', 'owner'] },
  { href: urls.till, label: 'Till', roles: ['desk', 'owner'] },
  { href: urls.office, label: 'Office', roles: ['owner'] },
];

/** The rooms that this person has business in; a door that would not open is not drawn. */
export function roomsFor(role: Role): readonly Room[] {
  return ALL.filter(({ roles }) => roles.includes(role)).map(({ href, label }) => ({ href, label }));
}

export const isIn = (room: Room, path: string): boolean =>
  path === room.href || path.startsWith(`${room.href}/`) || path.startsWith(`${room.href}?`);

/** Where a person starts the day. */
export function homeOf(role: Role): string {
  return role === 'desk' ? urls.counter : role === 'owner' ? urls.office : urls.bays;
}
