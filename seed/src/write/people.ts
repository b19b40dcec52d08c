import type { Prisma, Tx } from '#libs/db';
import { MODELS, type Model } from '../data/cars.ts';
import { FIRMS, FIRST_NAMES, LAST_NAMES, STREETS, TOWNS } from '../data/people.ts';
import { nextId } from '../ids.ts';
import type { Random } from '../random.ts';
import type { Staff } from './workshop.ts';

export interface DemoCar {
  vehicleId: string;
  customerId: string;
  customerName: string;
  registration: string;
  model: Model;
  odometerKm: number;
}

const CUSTOMERS = 46;
const VEHICLES = 64;
const LETTERS = 'ABCDEFGHJKLMNPRSTUVWXYZ';

function customerRow(random: Random, index: number): Prisma.CustomerCreateManyInput {
  const firm = index < FIRMS.length ? FIRMS[index] : undefined;
  const town = random.pick(TOWNS);
  const name = firm ?? `${FIRST_NAMES[index % FIRST_NAMES.length] ?? ''} ${LAST_NAMES[(index * 7) % LAST_NAMES.length] ?? ''}`;
  return {
    id: nextId(random),
    name,
    kind: firm === undefined ? 'person' : 'business',
    phone: `0555 ${String(1000 + index * 13).slice(0, 4)}`,
    email: random.chance(0.6) ? `customer${index}@post.example` : '',
    addressLines: [`${random.between(1, 99)} ${random.pick(STREETS)}`],
    postcode: `${town.postcode} ${random.between(1, 9)}${random.pick([...LETTERS])}${random.pick([...LETTERS])}`,
    city: town.city,
    country: 'IE',
    ...(firm === undefined ? {} : { vatId: `IE00000${10 + index}F` }),
  };
}

/** Customers and their cars; a few have two. What each engine holds is remembered with who said so. */
export async function writePeople(tx: Tx, random: Random, { staff, now }: { staff: Staff; now: Date }): Promise<DemoCar[]> {
  const customers = Array.from({ length: CUSTOMERS }, (_, index) => customerRow(random, index));
  await tx.customer.createMany({ data: customers });
  const cars = Array.from({ length: VEHICLES }, (_, index): DemoCar => {
    const customer = customers[index % CUSTOMERS];
    const letters = (length: number): string => Array.from({ length }, () => random.pick([...LETTERS])).join('');
    return {
      vehicleId: nextId(random),
      customerId: customer?.id ?? '',
      customerName: customer?.name ?? '',
      registration: `${letters(2)}${10 + index}${letters(3)}`,
      model: random.pick(MODELS),
      odometerKm: random.between(38_000, 214_000),
    };
  });
  await tx.vehicle.createMany({
    data: cars.map(({ vehicleId, customerId, registration, model }) => ({
      id: vehicleId,
      customerId,
      registration,
      make: model.make,
      model: model.model,
      engineCode: model.engine.code,
      buildYear: random.between(model.from, model.to),
      buildMonth: random.between(1, 12),
      thermostatKind: 'wax',
    })),
  });
  await tx.vehicleFact.createMany({
    data: cars
      .filter((_, index) => index % 9 !== 4)
      .flatMap(({ vehicleId, model }) => [
        {
          vehicleId,
          key: 'capacity',
          figure: model.engine.capacityL,
          unit: 'L',
          source: 'vehicle maker’s manual, demo',
          enteredById: staff.techId,
          enteredAt: now,
        },
        {
          vehicleId,
          key: 'cap',
          figure: model.engine.capKPa,
          unit: 'kPa',
          source: 'printed on the cap',
          enteredById: staff.techId,
          enteredAt: now,
        },
      ]),
  });
  return cars;
}
