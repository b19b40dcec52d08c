import { describe, expect, it } from '@jest/globals';
import { METRIC_UNITS, US_UNITS } from '#libs/units';
import { withFigure } from './with-figure.ts';

const PATH = '/coolant-bench';

describe('withFigure', () => {
  it('puts the figure into the address and lets the rest stand', () => {
    const address = { path: PATH, query: 'holds=7&out=0.2&was=out%3A0.2' };
    const changed = withFigure(address, { name: 'out', value: 3.141, quantity: 'volume', units: METRIC_UNITS });
    expect(changed).toBe('/coolant-bench?holds=7&out=3.15&in=C-L-kPa');
  });

  it('writes it in the units that the rest of the address is typed in', () => {
    const address = { path: PATH, query: 'holds=7&in=C-L-kPa' };
    expect(withFigure(address, { name: 'out', value: 3, quantity: 'volume', units: US_UNITS })).toBe(
      '/coolant-bench?holds=7&in=C-L-kPa&out=3',
    );
  });
});
