import { describe, expect, it } from '@jest/globals';
import { applyMarkup } from '#libs/money';
import { partsRuleOf, readPartsRule, typedPartsRule } from './parts-rule.ts';

describe('the rule for parts', () => {
  it('reads bands as they are typed and shows them so again', () => {
    const typed = { kind: 'bands', figure: '', bands: '20: 60\n100,50: 40 %\n\nabove: 25', roundTo: '0,05' } as const;
    const { rule, problems } = readPartsRule(typed);
    expect(problems).toEqual([]);
    expect(rule && applyMarkup('10.00', rule)).toBe('16.00');
    expect(rule && applyMarkup('200.00', rule)).toBe('250.00');
    expect(typedPartsRule(rule)).toEqual({ kind: 'bands', figure: '', bands: '20: 60\n100.50: 40\nabove: 25', roundTo: '0.05' });
  });

  it('says what is wrong', () => {
    expect(readPartsRule({ kind: 'bands', figure: '', bands: '20: 60', roundTo: '' }).problems).toEqual([
      'The last band has a top, so a dearer part has no price. Leave its top open.',
    ]);
    expect(readPartsRule({ kind: 'margin', figure: 'much', bands: '', roundTo: '' }).problems).toHaveLength(1);
    expect(readPartsRule({ kind: 'bands', figure: '', bands: '', roundTo: '' }).problems).toHaveLength(1);
  });

  it('is the plain mark-up of the workshop details unless another is kept', () => {
    expect(partsRuleOf({ partsRule: null, partsMarkupPct: '35' })).toEqual({ kind: 'percent', percent: '35' });
    const { rule } = readPartsRule({ kind: 'margin', figure: '20', bands: '', roundTo: '' });
    expect(applyMarkup('80.00', partsRuleOf({ partsRule: rule, partsMarkupPct: '35' }))).toBe('100.00');
  });
});
