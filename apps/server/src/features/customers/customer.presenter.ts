import { urls } from '../../web/urls.ts';
import type { Customer } from './customers.repository.ts';
import type { Vehicle } from './vehicles.repository.ts';

export interface CustomerView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string; main?: boolean }[] };
  facts: { term: string; said: string[] }[];
  vehicles: { href: string; registration: string; car: string; engineCode: string; built: string; newJob: string }[];
  hasVehicles: boolean;
}

export function presentCustomer(customer: Customer, vehicles: readonly Vehicle[]): CustomerView {
  const town = [customer.postcode, customer.city].filter((part) => part !== '').join(' ');
  const facts = [
    { term: 'Phone', said: [customer.phone] },
    { term: 'E-mail', said: [customer.email] },
    { term: 'Address', said: [...customer.addressLines, town] },
    { term: 'VAT number', said: [customer.vatId] },
    { term: 'Note', said: [customer.note] },
  ];
  return {
    title: customer.name,
    head: {
      title: customer.name,
      lead: customer.kind === 'business' ? `Business, customer ${customer.number}.` : `Customer ${customer.number}.`,
      rest: vehicles.length === 0 ? 'No vehicle on record yet: add the one that is spoken of.' : '',
      actions: [
        { href: urls.editCustomer(customer.id), label: 'Change' },
        { href: urls.newVehicle(customer.id), label: 'Add a vehicle', main: true },
      ],
    },
    facts: facts.map(({ term, said }) => ({ term, said: said.filter((line) => line !== '') })).filter(({ said }) => said.length > 0),
    vehicles: vehicles.map((vehicle) => ({
      href: urls.vehicle(vehicle.id),
      registration: vehicle.registration,
      car: `${vehicle.make} ${vehicle.model}`,
      engineCode: vehicle.engineCode,
      built: builtText(vehicle),
      newJob: urls.newJob(vehicle.id),
    })),
    hasVehicles: vehicles.length > 0,
  };
}

/** @example builtText({ buildYear: 2017, buildMonth: 3 }) // '03/2017' */
export function builtText({ buildYear, buildMonth }: Pick<Vehicle, 'buildYear' | 'buildMonth'>): string {
  if (buildYear === null) return '';
  return buildMonth === null ? String(buildYear) : `${String(buildMonth).padStart(2, '0')}/${buildYear}`;
}
