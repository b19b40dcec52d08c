import type { ComparisonRow } from './comparison-rows.ts';
import type { YardstickSaid } from './yardstick-words.ts';

/** A proof sheet as it was made: everything its page shows, so that it is the same whenever it is printed. */
export interface ProofDocument {
  workshop: { name: string; lines: string[] };
  isDemo: boolean;
  customer: string;
  vehicle: string[];
  job: number;
  outcome: { peg: string; headline: string; sentences: string[] };
  /** When the proof is still owed, and by when. */
  owed: string | null;
  columns: string[];
  rows: ComparisonRow[];
  verdicts: { peg: string; word: string; sure: string }[];
  chart: { svg: string; title: string };
  reasons: { heading: string; words: string[] }[];
  yardstick: YardstickSaid | null;
  limits: string[];
  advice: string[];
  method: string;
}
