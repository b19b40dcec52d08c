import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { Action } from '#libs/checklist';
import type { DeviceFacts, Entry, Holder, StoredSheet, Unsaved, WaitingAction, WaitingPhoto } from './device-types.ts';

interface Shelves extends DBSchema {
  outbox: { key: number; value: Entry; indexes: { id: string } };
  sheets: { key: string; value: StoredSheet };
  unsaved: { key: string; value: Unsaved };
  /** Pictures of this tablet by their id, for as long as its card may show them. */
  pictures: { key: string; value: ArrayBuffer };
  facts: { key: string; value: unknown };
}

const STRICT = { durability: 'strict' } as const;
/** Of pictures that have been sent, the newest stay to be shown without a network. */
const PICTURES_KEPT = 30;

/** What the tablet keeps: committed to its storage before anything is said to be kept. */
export class Store {
  private constructor(private readonly db: IDBPDatabase<Shelves>) {}

  /** @throws where the browser gives no storage, as in a private window */
  static async open(): Promise<Store> {
    const db = await openDB<Shelves>('runwarm-tablet', 1, {
      upgrade(shelves) {
        shelves.createObjectStore('outbox', { keyPath: 'order', autoIncrement: true }).createIndex('id', 'id', { unique: true });
        shelves.createObjectStore('sheets');
        shelves.createObjectStore('unsaved', { keyPath: 'id' });
        shelves.createObjectStore('pictures');
        shelves.createObjectStore('facts');
      },
    });
    return new Store(db);
  }

  /** Puts an act into the queue, its photo before it, under the tablet's next number: all of it or nothing. */
  async put(
    action: Omit<Action, 'deviceSeq'>,
    { signIn, offsetMs, photo }: { signIn: string | null; offsetMs: number; photo: WaitingPhoto | null },
  ): Promise<Action> {
    const tx = this.db.transaction(['outbox', 'facts', 'pictures'], 'readwrite', STRICT);
    const facts = tx.objectStore('facts');
    const seq = (((await facts.get('seq')) as number | undefined) ?? 0) + 1;
    const numbered: Action = { ...action, deviceSeq: seq };
    if (photo) {
      await tx.objectStore('outbox').add(photo);
      await tx.objectStore('pictures').put(photo.bytes, photo.id);
    }
    const waiting: WaitingAction = { type: 'action', id: action.id, card: action.card, action: numbered, signIn, offsetMs };
    await tx.objectStore('outbox').add(waiting);
    await facts.put(seq, 'seq');
    await facts.put(action.readAt, 'last-read-at');
    await tx.done;
    return numbered;
  }

  waiting(most?: number): Promise<Entry[]> {
    return this.db.getAll('outbox', undefined, most);
  }

  countWaiting(): Promise<number> {
    return this.db.count('outbox');
  }

  /** Taken by the server: out of the queue and onto the card's own list in one step, so that it is never in neither. */
  async taken(entries: readonly Entry[]): Promise<void> {
    const tx = this.db.transaction(['outbox', 'sheets'], 'readwrite', STRICT);
    for (const entry of entries) {
      if (entry.order !== undefined) await tx.objectStore('outbox').delete(entry.order);
      if (entry.type !== 'action') continue;
      const sheet = await tx.objectStore('sheets').get(entry.card);
      if (!sheet || sheet.actions.some(({ id }) => id === entry.id)) continue;
      await tx.objectStore('sheets').put({ ...sheet, actions: [...sheet.actions, entry.action] }, entry.card);
    }
    await tx.done;
  }

  /** Will never be taken: out of the queue, and kept with the reason. */
  async refused(entry: Entry, unsaved: Unsaved): Promise<void> {
    const tx = this.db.transaction(['outbox', 'unsaved'], 'readwrite', STRICT);
    if (entry.order !== undefined) await tx.objectStore('outbox').delete(entry.order);
    await tx.objectStore('unsaved').put(unsaved);
    await tx.done;
  }

  /** Times that were written by a wrong clock, before anything of them was sent. */
  async rewrite(entries: readonly WaitingAction[]): Promise<void> {
    const tx = this.db.transaction('outbox', 'readwrite', STRICT);
    for (const entry of entries) await tx.store.put(entry);
    await tx.done;
  }

  unsaved(): Promise<Unsaved[]> {
    return this.db.getAll('unsaved');
  }

  async seen(id: string): Promise<void> {
    await this.db.delete('unsaved', id);
  }

  /** The day's cards as the server has them now, in place of those before. */
  async keepDay(device: DeviceFacts, { sheets, lastSeq }: { sheets: readonly StoredSheet[]; lastSeq: number }): Promise<void> {
    const tx = this.db.transaction(['sheets', 'facts', 'outbox', 'pictures'], 'readwrite', STRICT);
    const shelf = tx.objectStore('sheets');
    const needed = new Set((await tx.objectStore('outbox').getAll()).map(({ card }) => card));
    for (const id of await shelf.getAllKeys()) if (!needed.has(id) && !sheets.some(({ row }) => row.id === id)) await shelf.delete(id);
    for (const sheet of sheets) await shelf.put(sheet, sheet.row.id);
    const facts = tx.objectStore('facts');
    await facts.put(device, 'device');
    const seq = ((await facts.get('seq')) as number | undefined) ?? 0;
    if (lastSeq > seq) await facts.put(lastSeq, 'seq'); // this storage is younger than the tablet
    await this.dropOldPictures(tx.objectStore('pictures'), await tx.objectStore('outbox').getAll());
    await tx.done;
  }

  private async dropOldPictures(
    pictures: { getAllKeys: () => Promise<string[]>; delete: (key: string) => Promise<void> },
    waiting: readonly Entry[],
  ): Promise<void> {
    const sent = (await pictures.getAllKeys()).filter((id) => !waiting.some((entry) => entry.id === id));
    for (const id of sent.slice(0, Math.max(0, sent.length - PICTURES_KEPT))) await pictures.delete(id);
  }

  sheet(card: string): Promise<StoredSheet | undefined> {
    return this.db.get('sheets', card);
  }

  sheets(): Promise<StoredSheet[]> {
    return this.db.getAll('sheets');
  }

  picture(id: string): Promise<ArrayBuffer | undefined> {
    return this.db.get('pictures', id);
  }

  async device(): Promise<DeviceFacts | undefined> {
    return (await this.db.get('facts', 'device')) as DeviceFacts | undefined;
  }

  async holder(): Promise<Holder | null> {
    return ((await this.db.get('facts', 'holder')) as Holder | undefined) ?? null;
  }

  async hold(holder: Holder | null): Promise<void> {
    await this.db.put('facts', holder, 'holder');
  }

  async lastReadAt(): Promise<string | undefined> {
    return (await this.db.get('facts', 'last-read-at')) as string | undefined;
  }
}
