import { describe, expect, it } from '@jest/globals';
import { decideDemo, type Situation } from './demo-decision.ts';

const fresh: Situation = { demo: undefined, isEmbedded: true, isLoopback: true, databaseIsDemo: undefined };

describe('decideDemo', () => {
  it.each<[string, Partial<Situation>, string]>([
    ['an empty embedded database on loopback', {}, 'seed-demo'],
    ['DEMO=1 on the network', { demo: true, isLoopback: false }, 'seed-demo'],
    ['DEMO=0', { demo: false }, 'ask-owner'],
    ['an empty external database', { isEmbedded: false }, 'ask-owner'],
    ['an empty database open to the network', { isLoopback: false }, 'ask-owner'],
    ['a real workshop', { databaseIsDemo: false, isLoopback: false }, 'open'],
    ['a real workshop with DEMO=1', { databaseIsDemo: false, demo: true }, 'open'],
    ['a demo started again', { databaseIsDemo: true }, 'open'],
    ['a demo opened to the network unasked', { databaseIsDemo: true, isLoopback: false }, 'refuse'],
    ['a demo opened to the network with DEMO=1', { databaseIsDemo: true, isLoopback: false, demo: true }, 'open'],
    ['a demo where DEMO=0 was said', { databaseIsDemo: true, demo: false }, 'refuse'],
  ])('%s', (_name, change, kind) => {
    expect(decideDemo({ ...fresh, ...change }).kind).toBe(kind);
  });

  it('never makes a real workshop a demo', () => {
    expect(decideDemo({ ...fresh, databaseIsDemo: false, demo: true })).toEqual({ kind: 'open', isDemo: false });
  });
});
