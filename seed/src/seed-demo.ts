import { hash } from '@node-rs/argon2';
import type { Database } from '#libs/db';

const SECRET = 'demo-workshop';

/** Furnishes an empty database with the invented demo workshop. */
export async function seedDemo(
  db: Database,
  { now }: { now: Date; say: (line: string) => void },
): Promise<{ staff: readonly string[]; secret: string }> {
  const secretHash = await hash(SECRET);
  await db.$transaction(async (tx) => {
    await tx.workshop.create({ data: { id: 1, name: 'Demo', isDemo: true, createdAt: now } });
    await tx.staff.createMany({
      data: [
        { name: 'desk', displayName: 'Ines', role: 'desk', secretHash },
        { name: 'tech', displayName: 'Jory', role: 'technician', secretHash },
        { name: 'owner', displayName: 'Dagny', role: 'owner', secretHash },
      ],
    });
  });
  return { staff: ['desk', 'tech', 'owner'], secret: SECRET };
}
