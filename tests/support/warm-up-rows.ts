import type { Database } from '#libs/db';

/** One row of everything that the Run-up keeps for good, on the first job there is. */
export async function keepRunUpRows(db: Database, at: Date): Promise<void> {
  const { id: jobId, vehicleId } = await db.job.findFirstOrThrow({ select: { id: true, vehicleId: true } });
  const { id: keptById } = await db.staff.findFirstOrThrow();
  await db.warmUpLog.create({
    data: {
      jobId,
      vehicleId,
      role: 'before',
      source: 'typed',
      fileName: '',
      shape: 'typed',
      understood: {},
      answers: {},
      loggedOn: at,
      thermostatKind: 'unknown',
      heater: 'unknown',
      sampleCount: 1,
      samples: Uint8Array.of(0),
      analysis: {},
      verdict: 'not-enough',
      confidence: '0',
      keptById,
      keptAt: at,
      withdrawal: { create: { why: 'Another car’s', byId: keptById, at } },
    },
  });
  await db.gaugeLook.create({
    data: { jobId, role: 'before', reading: 'stays-cold', minutesDriven: 30, lookedOn: at, keptById, keptAt: at },
  });
  await db.proofSheet.create({
    data: {
      jobId,
      version: 1000,
      outcome: 'owed',
      document: {},
      madeAt: at,
      madeById: keptById,
      file: { create: { bytes: Uint8Array.of(37), sha256: 'not looked at', madeAt: at } },
    },
  });
}
