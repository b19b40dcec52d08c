import { checkMarkupRule, type MarkupBand, type MarkupRule } from '#libs/money';

/** How the owner types the rule by which a part's price comes from its cost. */
export interface TypedPartsRule {
  /** mark-up: the percentage of the workshop details. */
  kind: 'mark-up' | 'margin' | 'amount' | 'bands';
  figure: string;
  /** One band to a line, such as `20: 60` (costs up to 20: 60 % on top), the last one `above: 25`. */
  bands: string;
  roundTo: string;
}

const withPoint = (typed: string): string => typed.trim().replace(',', '.');

function readBand(line: string): MarkupBand {
  const [top = '', percent = ''] = line.split(':').map((part) => part.trim());
  return { upToCost: /^above$/i.test(top) ? null : withPoint(top), percent: withPoint(percent.replace('%', '')) };
}

function ruleOf({ kind, figure, bands }: TypedPartsRule): MarkupRule | null {
  switch (kind) {
    case 'mark-up':
      return null;
    case 'margin':
      return { kind, percent: withPoint(figure) };
    case 'amount':
      return { kind, amount: withPoint(figure) };
    case 'bands':
      return {
        kind,
        bands: bands
          .split('\n')
          .map((line) => line.trim())
          .filter((line) => line !== '')
          .map(readBand),
      };
  }
}

/**
 * The rule that was typed, or what is wrong with it; null: the plain mark-up.
 *
 * @example readPartsRule({ kind: 'bands', figure: '', bands: '20: 60\nabove: 25', roundTo: '0.05' })
 * // { rule: { kind: 'bands', bands: [{ upToCost: '20', percent: '60' }, { upToCost: null, percent: '25' }], roundTo: '0.05' }, problems: [] }
 */
export function readPartsRule(typed: TypedPartsRule): { rule: MarkupRule | null; problems: string[] } {
  const bare = ruleOf(typed);
  if (bare === null) return { rule: null, problems: [] };
  const roundTo = withPoint(typed.roundTo);
  const rule = roundTo === '' ? bare : { ...bare, roundTo };
  return { rule, problems: checkMarkupRule(rule) };
}

/** The rule as it is kept: the workshop's own, else the plain mark-up of its details. */
export function partsRuleOf({ partsRule, partsMarkupPct }: { partsRule: unknown; partsMarkupPct: string }): MarkupRule {
  return partsRule === null || partsRule === undefined ? { kind: 'percent', percent: partsMarkupPct } : (partsRule as MarkupRule);
}

/** What the form shows of a kept rule. */
export function typedPartsRule(kept: unknown): TypedPartsRule {
  const rule = kept as MarkupRule | null;
  const roundTo = rule?.roundTo ?? '';
  switch (rule?.kind) {
    case 'margin':
      return { kind: 'margin', figure: rule.percent, bands: '', roundTo };
    case 'amount':
      return { kind: 'amount', figure: rule.amount, bands: '', roundTo };
    case 'bands':
      return {
        kind: 'bands',
        figure: '',
        bands: rule.bands.map(({ upToCost, percent }) => `${upToCost ?? 'above'}: ${percent}`).join('\n'),
        roundTo,
      };
    case 'percent':
    case undefined:
      return { kind: 'mark-up', figure: '', bands: '', roundTo };
  }
}
