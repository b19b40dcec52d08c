import { partFamilies } from '#libs/fitment';
import type { Prisma, Tx } from '#libs/db';
import { SUPPLIERS, type Thermostat, THERMOSTATS } from '../data/parts.ts';

export interface DemoVariant extends Thermostat {
  variantId: string;
  supplierId: string;
  terms: (typeof SUPPLIERS)[number];
}

const FEATURES = [
  'seal',
  'flangeDiameterMm',
  'overallHeightMm',
  'valveDiameterMm',
  'openingTemperatureC',
  'bleedDevice',
  'bypassValve',
] as const;

/** Families, suppliers, variants with what their listings say, and which engine each is listed for. */
export async function writeCatalogue(tx: Tx, now: Date): Promise<DemoVariant[]> {
  await tx.partFamily.createMany({
    data: partFamilies.map((family) => ({
      key: family.id,
      version: 1,
      name: family.name,
      features: family as unknown as Prisma.InputJsonObject,
    })),
  });
  const family = await tx.partFamily.findFirstOrThrow({ where: { key: 'thermostat' } });
  const suppliers = new Map<string, string>();
  for (const terms of SUPPLIERS) suppliers.set(terms.name, (await tx.supplier.create({ data: { ...terms } })).id);
  const variants: DemoVariant[] = [];
  for (const part of THERMOSTATS) {
    const supplierId = suppliers.get(part.supplier) ?? '';
    const terms = SUPPLIERS.find(({ name }) => name === part.supplier) ?? SUPPLIERS[0];
    const { id } = await tx.partVariant.create({
      data: {
        familyId: family.id,
        supplierId,
        partNumber: part.partNumber,
        name: `Thermostat ${part.openingTemperatureC} °C`,
        priceNet: part.priceNet,
      },
    });
    variants.push({ ...part, variantId: id, supplierId, terms });
  }
  await tx.variantStatement.createMany({
    data: variants.flatMap((variant) =>
      FEATURES.map((feature) => {
        const value = variant[feature];
        const said = typeof value === 'number' ? { figure: value } : { words: value };
        return { variantId: variant.variantId, feature, provenance: 'listing', saidAt: now, ...said };
      }),
    ),
  });
  await tx.catalogueListing.createMany({
    data: variants.flatMap(({ variantId, engines, supplier }) =>
      engines.map((engineCode) => ({ variantId, engineCode, catalogue: `${supplier} list` })),
    ),
  });
  return variants;
}
