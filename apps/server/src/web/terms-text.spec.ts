import { describe, expect, it } from '@jest/globals';
import { termsText } from './terms-text.ts';

const terms = { returnDays: 30, windowStart: 'arrived', restockingPct: '0', unopenedOnly: false, daysToCredit: 21, returnCarriage: '0.00' };

describe('termsText', () => {
  it('says what a return costs and when its money comes', () => {
    expect(termsText(terms, 'EUR')).toBe('back within 30 days of arrival, no restocking charge, credits in 21 days');
  });

  it('warns of unopened only, restocking and carriage', () => {
    const hard = { ...terms, windowStart: 'ordered', restockingPct: '10.00', unopenedOnly: true, returnCarriage: '6.50' };
    expect(termsText(hard, 'EUR').replaceAll('\u00a0', ' ')).toBe(
      'back within 30 days of the order, unopened only, keeps 10 %, trip back EUR 6.50, credits in 21 days',
    );
  });

  it('says where nothing goes back', () => {
    expect(termsText({ ...terms, returnDays: 0 }, 'EUR')).toBe('takes nothing back');
  });
});
