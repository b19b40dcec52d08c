import { COLUMN_WORDS, LOCATION_WORDS, NOT_THESE, TIME_WORDS } from './column-words.ts';
import { pidQuantity } from './pid-quantity.ts';
import { type Quantity } from './quantity.ts';
import { timeUnitInHeader } from './unit-in-header.ts';
import { type TimeUnit } from './units.ts';

/** What a column's header says. */
export interface Recognised {
  quantity: Quantity | null;
  score: number;
  /** Named by its number in SAE J1979. */
  byPid: boolean;
  timeScore: number;
  timeUnit: TimeUnit | null;
  isLocation: boolean;
}

/** Reads a header such as `Engine Coolant Temperature [°C]`, `coolant_temp_c`, `0D - Vehicle Speed` or `AMBIANT_AIR_TEMP ()`. */
export function recogniseColumn(header: string): Recognised {
  const pid = pidQuantity(header);
  const name = columnName(header);
  const nothing = { quantity: null, score: 0, byPid: false, timeScore: 0, timeUnit: null, isLocation: false };
  if (LOCATION_WORDS.test(name) && !/\bspeed\b|\btime\b/.test(name)) return { ...nothing, isLocation: true };
  const time = TIME_WORDS.find(({ words }) => words.test(name));
  if (time && !pid) return { ...nothing, timeScore: time.score, timeUnit: timeUnitInHeader(header) };
  if (pid) return { ...nothing, quantity: pid, score: 10, byPid: true };
  if (NOT_THESE.test(name)) return nothing;
  const word = COLUMN_WORDS.find(({ words }) => words.test(name));
  if (!word) return nothing;
  return { ...nothing, quantity: word.quantity, score: word.score };
}

/** Small letters and single spaces, without accents, brackets and units: `cTemp` → `c temp`, `Temp. (°C)` → `temp`. */
function columnName(header: string): string {
  return header
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replace(/[[({][^\])}]*[\])}]/g, (part) => (/gps|obd/.test(part) ? ` ${part} ` : ' '))
    .replace(/tempe?rature?s?|temprature|temperatur[ae]?/g, 'temp')
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();
}
