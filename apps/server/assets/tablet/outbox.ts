import type { Entry, Unsaved, WaitingAction, WaitingPhoto } from './device-types.ts';
import type { Answer, Taken, Trouble } from './answers.ts';

const MOST = 200;
/** The server takes 256 kB in one call. */
const MOST_LETTERS = 180_000;
const FIRST_PAUSE_MS = 2_000;
const LONGEST_PAUSE_MS = 30_000;
/** A clock that was wrong by less is no matter. */
const CLOCK_MATTERS_MS = 120_000;

/** Where what waits is kept. */
export interface Queue {
  waiting: (most?: number) => Promise<Entry[]>;
  countWaiting: () => Promise<number>;
  /** Taken by the server: out of the queue. */
  taken: (entries: readonly Entry[]) => Promise<void>;
  /** Will never be taken: out of the queue, and kept with the reason. */
  refused: (entry: Entry, unsaved: Unsaved) => Promise<void>;
  rewrite: (entries: readonly WaitingAction[]) => Promise<void>;
}

/** The way to the server. */
export interface Line {
  take: (actions: readonly object[]) => Promise<Answer<{ answers: Taken[] }>>;
  photo: (card: string, id: string, sent: { query: URLSearchParams; bytes: ArrayBuffer }) => Promise<Answer<unknown>>;
}

/** How the queue stands, for the line at the foot. */
export interface OutboxState {
  readonly waiting: number;
  /** Null while all is well, or while it is being sent. */
  readonly trouble: Trouble | null;
  readonly isSending: boolean;
}

/** Sends what waits, in its order, and takes it out of the queue only when the server has answered for it. */
export class Outbox {
  private isSending = false;
  private trouble: Trouble | null = null;
  private pauseMs = FIRST_PAUSE_MS;

  constructor(
    private readonly store: Queue,
    private readonly line: Line,
    private readonly told: {
      changed: () => void;
      /** Everything that waited has been taken. */
      empty: () => void;
      /** By how much this tablet's clock is wrong, as of the last contact. */
      offsetMs: () => number;
      /** Something went wrong that may pass: drain again after so long. */
      later: (afterMs: number) => void;
    },
  ) {}

  async state(): Promise<OutboxState> {
    return { waiting: await this.store.countWaiting(), trouble: this.trouble, isSending: this.isSending };
  }

  /** Sends now, or as soon as it may; safe to call at any time. */
  nudge(): void {
    void this.drain();
  }

  /** @returns once nothing waits, or nothing can be sent. */
  async drain(): Promise<void> {
    if (this.isSending) return;
    this.isSending = true;
    try {
      await this.correctTimes();
      let sent = 0;
      for (let waiting = await this.store.waiting(MOST); waiting.length > 0; waiting = await this.store.waiting(MOST)) {
        this.trouble = await this.sendFirst(waiting);
        if (this.trouble !== null) break;
        sent += 1;
        this.told.changed();
      }
      if (this.trouble === null && sent > 0) this.told.empty();
    } finally {
      this.isSending = false;
      this.pauseMs = this.trouble === null ? FIRST_PAUSE_MS : Math.min(this.pauseMs * 2, LONGEST_PAUSE_MS);
      if (this.trouble !== null) this.told.later(this.pauseMs);
      this.told.changed();
    }
  }

  /** The photo at the head of the queue, or the actions up to the next photo. */
  private async sendFirst(waiting: readonly Entry[]): Promise<Trouble | null> {
    const [first] = waiting;
    if (first?.type === 'photo') return this.sendPhoto(first);
    return this.sendActions(actionsUpToPhoto(waiting));
  }

  private async sendActions(batch: readonly WaitingAction[]): Promise<Trouble | null> {
    const answer = await this.line.take(
      batch.map(({ action, signIn }) => ({ ...withoutDevice(action), ...(signIn === null ? {} : { signIn }) })),
    );
    if (!answer.ok) {
      if (answer.trouble !== 'refused' || batch.length === 0) return answer.trouble;
      const [first] = batch;
      if (batch.length > 1 || !first) return this.sendActions(batch.slice(0, Math.ceil(batch.length / 2)));
      await this.refuse(first, answer.why);
      return null;
    }
    const answers = new Map(answer.value.answers.map((one) => [one.id, one]));
    await this.store.taken(batch.filter(({ id }) => answers.get(id)?.state === 'kept' || answers.get(id)?.state === 'difference'));
    for (const entry of batch) {
      const found = answers.get(entry.id);
      if (found?.state === 'stray') await this.refuse(entry, `${found.why ?? ''} The desk finds it at Bays, Tablets.`.trim());
    }
    return batch.every(({ id }) => answers.has(id)) ? null : 'server-failed';
  }

  private async sendPhoto(photo: WaitingPhoto): Promise<Trouble | null> {
    const { by, step, words, takenAt, signIn } = photo;
    const query = new URLSearchParams({ by, step, words, takenAt, ...(signIn === null ? {} : { signIn }) });
    const answer = await this.line.photo(photo.card, photo.id, { query, bytes: photo.bytes });
    if (answer.ok) {
      await this.store.taken([photo]);
      return null;
    }
    if (answer.trouble !== 'refused') return answer.trouble;
    await this.refuse(photo, answer.why);
    return null;
  }

  private async refuse(entry: Entry, why: string): Promise<void> {
    const words = entry.type === 'photo' ? 'A photo' : `${entry.action.kind}, ${entry.action.step}`;
    await this.store.refused(entry, { id: entry.id, card: entry.card, words, why });
  }

  /** What was written by a clock that turned out to be wrong is put right once, before it is first sent. */
  private async correctTimes(): Promise<void> {
    const offsetMs = this.told.offsetMs();
    const wrong = (await this.store.waiting()).flatMap((entry) => {
      if (entry.type !== 'action' || Math.abs(offsetMs - entry.offsetMs) < CLOCK_MATTERS_MS) return [];
      const readAt = new Date(Date.parse(entry.action.readAt) + offsetMs - entry.offsetMs).toISOString();
      return [{ ...entry, offsetMs, action: { ...entry.action, readAt } }];
    });
    if (wrong.length > 0) await this.store.rewrite(wrong);
  }
}

function actionsUpToPhoto(waiting: readonly Entry[]): readonly WaitingAction[] {
  const batch: WaitingAction[] = [];
  let letters = 0;
  for (const entry of waiting) {
    if (entry.type === 'photo') break;
    letters += JSON.stringify(entry.action).length + 100;
    if (batch.length > 0 && letters > MOST_LETTERS) break;
    batch.push(entry);
  }
  return batch;
}

/** Which tablet it is says its token. */
function withoutDevice({ deviceId: _, ...action }: WaitingAction['action']): object {
  return action;
}
