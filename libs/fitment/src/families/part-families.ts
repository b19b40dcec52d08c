import { cap } from './cap.ts';
import { hose } from './hose.ts';
import { type PartFamily } from './part-family.types.ts';
import { sensor } from './sensor.ts';
import { thermostat } from './thermostat.ts';
import { waterPump } from './water-pump.ts';

/** The part families that a workshop starts with. */
export const partFamilies: readonly PartFamily[] = [thermostat, waterPump, hose, cap, sensor];
