import { describe, expect, it } from '@jest/globals';
import { type Statement, statedValues } from './stated-values.ts';

const said = (provenance: string, figure: number, day = 1): Statement => ({
  id: `${provenance}-${day}`,
  feature: 'flangeDiameterMm',
  figure,
  words: null,
  provenance,
  saidAt: new Date(Date.UTC(2026, 5, day)),
});

describe('statedValues', () => {
  it('takes what was measured before a photo and a list, however old', () => {
    const value = statedValues([said('listing', 54, 9), said('measured', 53.9, 1), said('photo', 54.5, 8)]).get('flangeDiameterMm');
    expect(value).toEqual({
      value: 53.9,
      provenance: 'measured',
      differing: [
        { value: 54.5, provenance: 'photo' },
        { value: 54, provenance: 'listing' },
      ],
    });
  });

  it('takes the newest of one kind, and names no difference where all say the same', () => {
    expect(statedValues([said('listing', 52, 1), said('listing', 54, 2)]).get('flangeDiameterMm')?.value).toBe(54);
    expect(statedValues([said('listing', 54, 1), said('photo', 54, 2)]).get('flangeDiameterMm')?.differing).toEqual([]);
  });

  it('says nothing of what nobody said', () => {
    expect(statedValues([]).size).toBe(0);
  });
});
