import { describe, expect, it } from '@jest/globals';
import { type SentFacts, sentWords } from './sent-words.ts';

const WELL: SentFacts = {
  ...{ waiting: 0, unsaved: 0, trouble: null, isSending: false, storage: null, isNearlyFull: false },
  ...{ survivesReload: true, contactAt: '09:40', clock: '' },
};

describe('the line at the foot', () => {
  it('says that all is saved only where nothing waits', () => {
    expect(sentWords(WELL)).toEqual({ state: 'saved', bold: 'All saved', text: 'last contact 09:40', beads: [] });
    expect(sentWords({ ...WELL, trouble: 'no-network' })).toMatchObject({ bold: 'All saved', text: 'no network now, last contact 09:40' });
  });

  it('counts what waits and says why', () => {
    expect(sentWords({ ...WELL, waiting: 3, trouble: 'no-network' })).toMatchObject({
      state: 'waiting',
      bold: '3 waiting',
      beads: [1, 2, 3],
    });
    expect(sentWords({ ...WELL, waiting: 40, trouble: 'not-enrolled' }).text).toContain('enrol it again');
    expect(sentWords({ ...WELL, waiting: 40 }).beads).toHaveLength(8);
  });

  it('says before all else what can’t be saved, or that nothing can', () => {
    expect(sentWords({ ...WELL, unsaved: 1, waiting: 2 })).toMatchObject({
      state: 'refused',
      bold: '1 can’t be saved',
      text: 'see why; 2 more waiting',
    });
    expect(sentWords({ ...WELL, storage: 'its storage is full', waiting: 2 })).toMatchObject({
      state: 'refused',
      bold: 'Nothing can be kept here',
    });
  });

  it('warns of a reload without TLS, of full storage and of a wrong clock', () => {
    const { text } = sentWords({
      ...WELL,
      survivesReload: false,
      isNearlyFull: true,
      clock: 'This tablet’s clock is 24 h ahead: the workshop’s time is written.',
    });
    expect(text).toContain('don’t reload it');
    expect(text).toContain('nearly full');
    expect(text).toContain('24 h ahead');
  });
});
