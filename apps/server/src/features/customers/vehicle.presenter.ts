import { checkVin } from '#libs/vin';
import { dateText } from '../../web/dates.ts';
import { urls } from '../../web/urls.ts';
import { builtText } from './customer.presenter.ts';
import { THERMOSTAT_WORDS } from './vehicle-form.presenter.ts';
import type { VehicleHistory } from './vehicles.repository.ts';

export interface VehicleView {
  title: string;
  head: { title: string; lead: string; rest: string; actions: { href: string; label: string; main?: boolean }[] };
  customer: { href: string; name: string };
  facts: { term: string; said: string }[];
  vinNote: string;
  jobs: { href: string; number: number; what: string; complaint: string; stage: string; date: string }[];
  hasJobs: boolean;
}

function vinNote(vin: string | null): string {
  if (vin === null) return '';
  const { checkDigit, modelYears } = checkVin(vin);
  const years = modelYears.length === 0 ? '' : ` Its tenth sign can stand for ${modelYears.join(' or ')}; not every maker uses it so.`;
  return checkDigit.binding ? `The check digit agrees.${years}` : `No check digit is used for this region.${years}`;
}

export function presentVehicle(vehicle: VehicleHistory, timeZone: string): VehicleView {
  const title = `${vehicle.make} ${vehicle.model}`;
  const facts = [
    { term: 'Registration', said: vehicle.registration },
    { term: 'VIN', said: vehicle.vin ?? '' },
    { term: 'Engine code', said: vehicle.engineCode },
    { term: 'Built', said: builtText(vehicle) },
    { term: 'Kind of thermostat', said: THERMOSTAT_WORDS[vehicle.thermostatKind] ?? '' },
    { term: 'Note', said: vehicle.note },
  ];
  return {
    title,
    head: {
      title,
      lead: `${vehicle.registration}.`,
      rest: vehicle.engineCode === '' ? 'The engine code is missing: it narrows the list of thermostats for nothing.' : '',
      actions: [
        { href: urls.editVehicle(vehicle.id), label: 'Change' },
        { href: urls.newJob(vehicle.id), label: 'Take the complaint', main: true },
      ],
    },
    customer: { href: urls.customer(vehicle.customer.id), name: vehicle.customer.name },
    facts: facts.filter(({ said }) => said !== ''),
    vinNote: vinNote(vehicle.vin),
    jobs: vehicle.jobs.map((job) => ({
      href: urls.job(job.id),
      number: job.number,
      what: job.template.name,
      complaint: job.complaint,
      stage: job.stage,
      date: dateText(job.createdAt, timeZone),
    })),
    hasJobs: vehicle.jobs.length > 0,
  };
}
