export interface Situation {
  /** What DEMO says; undefined where it says nothing. */
  demo: boolean | undefined;
  isEmbedded: boolean;
  isLoopback: boolean;
  /** What the database remembers; undefined while nobody has set it up. */
  databaseIsDemo: boolean | undefined;
}

export type StartDecision =
  { kind: 'seed-demo' } | { kind: 'open'; isDemo: boolean } | { kind: 'ask-owner' } | { kind: 'refuse'; why: string };

/**
 * Whether this start may bring or show demo data. Demo staff have a secret that everybody knows: a demo opens itself to the
 * network only where somebody has said so.
 */
export function decideDemo({ demo, isEmbedded, isLoopback, databaseIsDemo }: Situation): StartDecision {
  if (databaseIsDemo === undefined) {
    if (demo ?? (isEmbedded && isLoopback)) return { kind: 'seed-demo' };
    return { kind: 'ask-owner' };
  }
  if (!databaseIsDemo) return { kind: 'open', isDemo: false };
  if (demo === false) {
    return {
      kind: 'refuse',
      why: 'This database holds the demo workshop. With DEMO=0 choose another DATA_DIR or DATABASE_URL, or leave DEMO out.',
    };
  }
  if (!isLoopback && demo !== true) {
    return {
      kind: 'refuse',
      why: 'The demo workshop has a secret that everybody knows, so it stays on this machine. Say DEMO=1 to open it to the network all the same.',
    };
  }
  return { kind: 'open', isDemo: true };
}
