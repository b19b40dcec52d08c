import { formatFigure } from '#libs/units';
import { checkNumber } from '../checks/check-number.ts';
import { WATER_LIMITS, type WaterAnalysis, type WaterLimit } from '../data/water-limits.ts';
import { refuse, type Grounds, type Outcome, type Warning } from '../outcome.ts';
import { SOURCE } from '../sources.ts';

export interface WaterQualityInput extends WaterAnalysis {
  /** Bought as demineralised or distilled, container closed. */
  readonly isDemineralised?: boolean | undefined;
}

export interface WaterItem {
  readonly key: WaterLimit['key'];
  readonly name: string;
  readonly unit: string;
  readonly value: number | null;
  readonly least: number | null;
  readonly most: number;
  readonly verdict: 'within' | 'outside' | 'not-known';
}

export interface WaterQuality extends Grounds {
  readonly verdict: 'suitable' | 'unsuitable' | 'not-known';
  readonly items: readonly WaterItem[];
  readonly text: string;
}

function judge(limit: WaterLimit, value: number | undefined): WaterItem {
  const { key, name, unit, least, most } = limit;
  if (value === undefined) return { key, name, unit, value: null, least, most, verdict: 'not-known' };
  const isWithin = value <= most && (least === null || value >= least);
  return { key, name, unit, value, least, most, verdict: isWithin ? 'within' : 'outside' };
}

function outsideText(found: WaterItem): string {
  const range =
    found.least === null ? `at most ${formatFigure(found.most, 0)}` : `${formatFigure(found.least, 1)} to ${formatFigure(found.most, 1)}`;
  return `${found.name} ${formatFigure(found.value ?? 0, 1)} ${found.unit}`.trimEnd() + ` (${range})`;
}

/**
 * Whether water will do for mixing coolant.
 *
 * @param input What is known of it; demineralised water needs no figures
 * @returns A verdict per figure and over all; refused for a figure that can't be
 * @example waterQuality({ chlorideMgL: 80 }) // verdict 'unsuitable'
 */
export function waterQuality(input: WaterQualityInput): Outcome<WaterQuality> {
  for (const { key, name, unit } of WATER_LIMITS) {
    const problem = checkNumber(input[key] ?? 0, { field: key, name, unit, least: 0, most: key === 'pH' ? 14 : 1e5 });
    if (problem) return refuse(problem);
  }
  const items = WATER_LIMITS.map((limit) => judge(limit, input[limit.key]));
  const outside = items.filter(({ verdict }) => verdict === 'outside');
  const grounds = { assumptions: ['The product label rules: some products ask for more.'], sources: [SOURCE.water] };
  if (outside.length > 0) {
    const text = `${outside.map(outsideText).join('; ')}: do not mix with this water. Use demineralised water.`;
    const warnings: Warning[] = [{ code: 'water-unsuitable', text }];
    return { ok: true, verdict: 'unsuitable', items, text, warnings, ...grounds };
  }
  if (input.isDemineralised === true || items.every(({ verdict }) => verdict === 'within')) {
    return { ok: true, verdict: 'suitable', items, text: 'Suitable for mixing.', warnings: [], ...grounds };
  }
  const text = 'Not everything is known of this water. Demineralised water is the safe choice; hard tap water leaves scale.';
  return { ok: true, verdict: 'not-known', items, text, warnings: [], ...grounds };
}
