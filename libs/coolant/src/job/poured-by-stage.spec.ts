import { describe, expect, it } from '@jest/globals';
import { pouredByStage } from './poured-by-stage.ts';

describe('pouredByStage', () => {
  it('adds up each stage by itself and marks it by its least sure pour', () => {
    const jug = { stage: 'first-fill', productMl: 900, waterMl: 1100, keptMl: 0, about: false } as const;
    expect(
      pouredByStage([jug, { ...jug, stage: 'next-morning', productMl: 0, waterMl: 50 }, { ...jug, keptMl: 500, about: true }]),
    ).toEqual({
      firstFill: { volumeL: 4.5, productL: 1.8, keptL: 0.5, isAbout: true },
      afterShortRun: undefined,
      afterRunHot: undefined,
      nextMorning: { volumeL: 0.05, productL: 0, keptL: 0, isAbout: false },
    });
  });
});
