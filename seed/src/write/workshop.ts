import { hash } from '@node-rs/argon2';
import { TEMPLATES } from '#libs/checklist';
import type { Prisma, Tx } from '#libs/db';
import { ZONE } from '../workshop-hours.ts';

export const SECRET = 'demo-workshop';

export interface Staff {
  deskId: string;
  techId: string;
  ownerId: string;
}

/** The invented workshop, its people, places, instruments and coolant. */
export async function writeWorkshop(tx: Tx, now: Date): Promise<Staff> {
  await tx.workshop.create({
    data: {
      id: 1,
      name: 'Orme’s Workshop',
      addressLines: ['4 Tannery Lane'],
      postcode: 'SM4 2QX',
      city: 'Saltmere',
      country: 'IE',
      phone: '0555 0142',
      email: 'orme@workshop.example',
      vatId: 'IE0000000O',
      timeZone: ZONE,
      currency: 'EUR',
      isDemo: true,
      altitudeM: 240,
      coldestAirC: '-22',
      hottestAirC: '36',
      labourRate: '62.00',
      partsMarkupPct: '35',
      wasteChargePerL: '0.90',
      vatRatePct: '23',
      guaranteeWords: 'Twelve months on our work and the parts we fitted.',
      createdAt: now,
    },
  });
  await tx.jobTemplate.createMany({
    data: TEMPLATES.map((template) => ({
      key: template.key,
      version: template.version,
      name: template.name,
      definition: template as unknown as Prisma.InputJsonObject,
    })),
  });
  await tx.place.createMany({
    data: [
      { name: 'Bay 1', kind: 'bay', words: 'two-post lift', position: 1 },
      { name: 'Bay 2', kind: 'bay', words: 'flat floor', position: 2 },
      { name: 'Apron', kind: 'apron', words: 'outside, engines run', position: 3 },
    ],
  });
  await tx.instrument.createMany({
    data: [
      { name: 'Vernier caliper', measures: 'length', unit: 'mm', expandedU: '0.05', uSource: 'common practice, no source' },
      { name: 'Steel rule', measures: 'length', unit: 'mm', expandedU: '0.5', uSource: 'common practice, no source' },
      { name: 'Contact probe', measures: 'temperature', unit: '°C', expandedU: '2', uSource: 'its data sheet' },
      { name: 'Infrared thermometer', measures: 'temperature', unit: '°C', expandedU: '4', uSource: 'its data sheet' },
      { name: 'Refractometer', measures: 'strength', unit: '°C', expandedU: '2', uSource: 'its scale' },
    ],
  });
  await tx.coolantProduct.createMany({
    data: [
      {
        name: 'Concentrate T-40, organic',
        glycol: 'ethylene',
        technology: 'organic',
        approval: 'T-40',
        labelProduct: '1',
        labelWater: '1',
        labelFreezesC: '-37',
        pricePerL: '9.80',
        serviceYears: 5,
        serviceKm: 250_000,
      },
      {
        name: 'Ready-mixed T-40, organic',
        glycol: 'ethylene',
        technology: 'organic',
        approval: 'T-40',
        isReadyMixed: true,
        labelProduct: '1',
        labelWater: '0',
        labelFreezesC: '-37',
        pricePerL: '6.40',
        serviceYears: 5,
        serviceKm: 250_000,
        isActive: false,
      },
    ],
  });
  const secretHash = await hash(SECRET);
  const add = async (name: string, displayName: string, role: string): Promise<string> =>
    (await tx.staff.create({ data: { name, displayName, role, secretHash, createdAt: now } })).id;
  return {
    deskId: await add('desk', 'Ines', 'desk'),
    techId: await add('tech', 'Jory', 'technician'),
    ownerId: await add('owner', 'Dagny', 'owner'),
  };
}
