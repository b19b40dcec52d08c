import { urls } from '../../web/urls.ts';
import type { CustomerFound } from './customers.repository.ts';

export interface CounterView {
  title: string;
  words: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string; main?: boolean }[] };
  customers: { href: string; name: string; phone: string; city: string; vehicles: { href: string; registration: string; car: string }[] }[];
  isEmpty: boolean;
}

function leadFor(words: string, count: number): string {
  if (words === '') return count === 0 ? 'Nobody is on record yet.' : 'Who is on the phone?';
  if (count === 0) return `Nothing on record has “${words}” in it.`;
  return count === 1 ? 'One customer found.' : `${count} customers found.`;
}

export function presentCounter(words: string, found: readonly CustomerFound[]): CounterView {
  const rest = words === '' ? 'Type any part of a name, phone number, town or registration. Below are those added last.' : '';
  return {
    title: 'Counter',
    words,
    head: {
      title: 'Counter',
      lead: leadFor(words, found.length),
      rest,
      actions: [{ href: urls.newCustomer, label: 'Add a customer', main: true }],
    },
    customers: found.map(({ id, name, phone, city, vehicles }) => ({
      href: urls.customer(id),
      name,
      phone,
      city,
      vehicles: vehicles.map((vehicle) => ({
        href: urls.vehicle(vehicle.id),
        registration: vehicle.registration,
        car: `${vehicle.make} ${vehicle.model}`,
      })),
    })),
    isEmpty: found.length === 0,
  };
}
