import { randomUUID } from 'node:crypto';
import type { Action } from '#libs/checklist';
import type { Entry, Unsaved, WaitingAction } from '../../apps/server/assets/tablet/device-types.ts';
import type { Queue } from '../../apps/server/assets/tablet/outbox.ts';

/** What a tablet's storage holds, for tests without a browser: it outlives the outbox that works on it. */
export class MemoryQueue implements Queue {
  readonly made: string[] = [];
  readonly unsaved: Unsaved[] = [];
  private readonly entries: Entry[] = [];
  private order = 0;

  constructor(
    private readonly card: string,
    private readonly by: string,
    /** A tablet counts on from card to card. */
    private readonly nextSeq: () => number,
  ) {}

  put({ kind, step, value }: Pick<Action, 'kind' | 'step' | 'value'>, readAt: string): void {
    const id = randomUUID();
    const action: Action = {
      id,
      card: this.card,
      deviceSeq: this.nextSeq(),
      kind,
      step,
      value,
      readAt,
      by: this.by,
      byProof: 'picked-offline',
    };
    this.order += 1;
    this.entries.push({ type: 'action', order: this.order, id, card: this.card, action, signIn: null, offsetMs: 0 });
    this.made.push(id);
  }

  waiting = (most?: number): Promise<Entry[]> => Promise.resolve(this.entries.slice(0, most));
  countWaiting = (): Promise<number> => Promise.resolve(this.entries.length);
  taken = (entries: readonly Entry[]): Promise<void> => Promise.resolve(this.drop(entries));
  rewrite = (entries: readonly WaitingAction[]): Promise<void> => {
    for (const entry of entries) this.entries[this.entries.findIndex(({ id }) => id === entry.id)] = entry;
    return Promise.resolve();
  };
  refused = (entry: Entry, unsaved: Unsaved): Promise<void> => {
    this.unsaved.push(unsaved);
    return Promise.resolve(this.drop([entry]));
  };

  private drop(entries: readonly Entry[]): void {
    for (const { id } of entries) {
      const at = this.entries.findIndex((one) => one.id === id);
      if (at >= 0) this.entries.splice(at, 1);
    }
  }
}
