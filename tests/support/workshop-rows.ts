import type { Database } from '#libs/db';

/** What a main line needs beside people: a bay, a coolant, and three variants that really are ambiguous. */
export async function stockWorkshop(db: Database): Promise<void> {
  const saidAt = new Date('2026-06-01T08:00:00Z');
  await db.place.create({ data: { name: 'Bay 1', kind: 'bay', words: 'two-post lift', position: 1 } });
  await db.instrument.create({ data: { name: 'Vernier caliper', measures: 'length', unit: 'mm', expandedU: '0.05' } });
  await db.coolantProduct.create({
    data: {
      name: 'Concentrate T-40',
      glycol: 'ethylene',
      technology: 'organic',
      labelProduct: '1',
      labelWater: '1',
      labelFreezesC: '-37',
      pricePerL: '9.80',
    },
  });
  const supplier = await db.supplier.create({ data: { name: 'Norrow Parts', returnDays: 30 } });
  const family = await db.partFamily.findFirstOrThrow({ where: { key: 'thermostat' } });
  const variants = [
    { partNumber: 'NR-5488', priceNet: '23.40', seal: 'o-ring', flangeDiameterMm: 54, overallHeightMm: 46.5, openingTemperatureC: 88 },
    { partNumber: 'NR-5489', priceNet: '26.10', seal: 'moulded-rim', flangeDiameterMm: 54, overallHeightMm: 49, openingTemperatureC: 88 },
    { partNumber: 'NR-5252', priceNet: '19.80', seal: 'flat-gasket', flangeDiameterMm: 52, overallHeightMm: 46.5, openingTemperatureC: 82 },
  ];
  for (const { partNumber, priceNet, ...features } of variants) {
    await db.partVariant.create({
      data: {
        familyId: family.id,
        supplierId: supplier.id,
        partNumber,
        name: `Thermostat ${features.openingTemperatureC} °C`,
        priceNet,
        listings: { create: { engineCode: 'TK14', catalogue: 'Norrow list' } },
        statements: {
          create: Object.entries(features).map(([feature, value]) => ({
            feature,
            provenance: 'listing',
            saidAt,
            ...(typeof value === 'number' ? { figure: value } : { words: value }),
          })),
        },
      },
    });
  }
}
