import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from '@jest/globals';
import { samplesOf } from '../../testing/traces.ts';
import { analyseWarmUp } from '../analyse-warm-up.ts';
import { compareLogs } from './compare-logs.ts';

const analysed = (name: string, nominalOpeningC: number) =>
  analyseWarmUp({
    samples: samplesOf(readFileSync(path.resolve(import.meta.dirname, `../../../../tests/data/warm-up/${name}.csv`), 'utf8')),
    nominalOpeningC,
  });

const stuckOpen = analysed('S06_stuck_open', 87);
const cold = analysed('S07_stuck_open_cold_motorway', 87);
const good = analysed('S02_normal87', 87);
const early = analysed('S04_opens_early72', 87);
const short = analysed('S14_normal87_short', 87);
const restart = analysed('S13_hot_restart', 87);

describe('before and after', () => {
  it('tells a customer that it is cured, with figures', () => {
    const { outcome, headline, sentences, proofOwed } = compareLogs(stuckOpen, good);
    expect({ outcome, headline, proofOwed }).toEqual({ outcome: 'cured', headline: 'Warms up as it should', proofOwed: false });
    expect(sentences.join(' ')).toMatch(/Before the repair: the engine settled at 65 °C, 80 °C was never reached/);
    expect(sentences.join(' ')).toMatch(/After it: the engine settled at 88 °C, 80 °C came after 11 min/);
  });

  it.each([
    ['no log after it', stuckOpen, null, 'owed', true],
    ['a log too short', stuckOpen, short, 'not-proven', true],
    ['still a fault', stuckOpen, early, 'not-cured', false],
    ['warmer, but from a hot start', stuckOpen, restart, 'looks-better', true],
    ['no log before it', null, good, 'works-now', false],
    ['a log before it that proved nothing', short, good, 'works-now', false],
  ] as const)('%s', (_, before, after, outcome, proofOwed) => {
    expect(compareLogs(before, after)).toMatchObject({ outcome, proofOwed });
  });

  it('says what the logs do not show, and that weather and drive differed', () => {
    const { limits } = compareLogs(cold, good);
    expect(limits.join(' ')).toMatch(/own temperature sensor/);
    expect(limits.join(' ')).toMatch(/0 °C outside before, 15 °C after/);
    expect(limits.join(' ')).toMatch(/88 km\/h on average before, 44 km\/h after/);
    expect(compareLogs(stuckOpen, restart).limits.join(' ')).toMatch(/does not begin with a cold engine/);
  });
});
