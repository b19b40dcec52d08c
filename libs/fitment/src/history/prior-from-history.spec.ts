import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { comparison } from '../comparison/comparison.ts';
import { type FitmentEvent, priorFromHistory } from './prior-from-history.ts';

const fitted = (candidateId: string, ageDays = 0): FitmentEvent => ({ candidateId, kind: 'fitted', ageDays });
const priorOfA = (events: readonly FitmentEvent[]): number =>
  priorFromHistory({ candidates: ['A', 'B'], events }).priors[0]?.prior ?? Number.NaN;

describe('priorFromHistory', () => {
  // Laplace's rule of succession, (s + 1) / (n + 2), Essai philosophique sur les probabilités, 1814 (from memory).
  it.each([
    [0, 0, 1 / 2],
    [1, 0, 2 / 3],
    [3, 1, 4 / 6],
    [10, 0, 11 / 12],
  ])('%p of A and %p of B fitted today: %p', (ofA, ofB, expected) => {
    const events = [...Array.from({ length: ofA }, () => fitted('A')), ...Array.from({ length: ofB }, () => fitted('B'))];
    expect(priorOfA(events)).toBeCloseTo(expected, 12);
  });

  it('halves an event every half-life', () => {
    expect(priorOfA([fitted('A', 1095)])).toBeCloseTo(1.5 / 2.5, 12);
    expect(priorOfA([fitted('A', 2190)])).toBeCloseTo(1.25 / 2.25, 12);
  });

  it('weakens a fitting that came back, most when the part was to blame', () => {
    const cameBack = (comeback: FitmentEvent['comeback']) => priorOfA([{ ...fitted('A'), comeback }]);
    expect(cameBack('part')).toBeCloseTo(1.1 / 2.1, 12);
    expect(cameBack('part')).toBeLessThan(cameBack('other'));
    expect(cameBack('other')).toBeLessThan(cameBack('work'));
    expect(cameBack('work')).toBeLessThan(cameBack(undefined));
  });

  it('takes a listing as weak evidence', () => {
    expect(priorOfA([{ candidateId: 'A', kind: 'listed', ageDays: 0 }])).toBeCloseTo(1.25 / 2.25, 12);
  });

  it('keeps what fitted besides the candidates apart', () => {
    const answer = priorFromHistory({ candidates: ['A', 'B'], events: [fitted('Z'), fitted('Z')] });
    expect(answer.otherEvidence).toBeCloseTo(2, 12);
    expect(answer.priors.map(({ prior }) => prior)).toEqual([0.5, 0.5]);
  });

  it('cannot save a variant whose seal does not match', () => {
    const events = Array.from({ length: 500 }, () => fitted('gasket'));
    const { priors } = priorFromHistory({ candidates: ['gasket', 'ring'], events });
    const answer = comparison({
      features: [{ key: 'seal', kind: 'category', criticality: 'sealing' }],
      candidates: priors.map(({ id, prior }) => ({ id, prior, values: { seal: id } })),
      readings: [{ key: 'seal', value: 'ring' }],
    });
    expect(priors[0]?.prior).toBeGreaterThan(0.99);
    expect(answer.ranking.find(({ id }) => id === 'gasket')).toMatchObject({ probability: 0, verdict: 'excluded' });
  });

  it('refuses events of the future and nobody to choose from', () => {
    expect(() => priorFromHistory({ candidates: ['A'], events: [fitted('A', -1)] })).toThrow('The age in days of event 1 is -1');
    expect(() => priorFromHistory({ candidates: [], events: [] })).toThrow('no candidate');
  });

  it('always sums to 1, and one more fitting never lowers a variant', () => {
    const event = fc.record({
      candidateId: fc.constantFrom('A', 'B', 'C', 'Z'),
      kind: fc.constantFrom('fitted' as const, 'listed' as const),
      ageDays: fc.nat(20_000),
      comeback: fc.constantFrom(undefined, 'part' as const, 'work' as const, 'other' as const),
    });
    fc.assert(
      fc.property(fc.array(event), (events) => {
        const before = priorFromHistory({ candidates: ['A', 'B', 'C'], events }).priors;
        const after = priorFromHistory({ candidates: ['A', 'B', 'C'], events: [...events, fitted('B')] }).priors;
        expect(before.reduce((sum, { prior }) => sum + prior, 0)).toBeCloseTo(1, 12);
        expect(after[1]?.prior).toBeGreaterThan(before[1]?.prior ?? 1);
        expect(after[0]?.prior).toBeGreaterThan(0);
      }),
    );
  });
});
