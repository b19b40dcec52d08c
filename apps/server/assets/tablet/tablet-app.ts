import type { Action } from '#libs/checklist';
import { actFromForm, fieldsOf, refused } from './act-from-form.ts';
import { type LocalCard, openSheet, withAction } from './card-from-sheet.ts';
import type { DeviceFacts, Holder, Unsaved, WaitingPhoto } from './device-types.ts';
import { LockScreen } from './lock-screen.ts';
import { newId } from './new-id.ts';
import { Outbox, type OutboxState } from './outbox.ts';
import type { Trouble } from './answers.ts';
import { server } from './server.ts';
import { shrinkPhoto } from './shrink-photo.ts';
import { cantBeKept, isNearlyFull } from './storage-words.ts';
import type { Store } from './store.ts';
import { TabletClock } from './tablet-clock.ts';
import { actionsOf, type Shown, TabletScreen } from './tablet-screen.ts';

/** After so long without a touch the tablet asks again who holds it. */
const IDLE_MS = 5 * 60_000;
/** How often it asks the server for what others did, while it is looked at. */
const REFRESH_MS = 30_000;

export interface Place {
  /** Null: the list of cars. */
  readonly card: string | null;
  readonly step: string | null;
}

export function placeIn({ pathname, search }: { pathname: string; search: string }): Place {
  const card = /^\/bays\/jobs\/([0-9a-f-]{36})\/card$/i.exec(pathname)?.[1]?.toLowerCase() ?? null;
  return { card, step: card === null ? null : new URLSearchParams(search).get('step') };
}

/** The job card on an enrolled tablet: what is done is kept here first, shown at once, and sent when it can be. */
export class TabletApp {
  private readonly clock = new TabletClock();
  private readonly screen: TabletScreen;
  private readonly outbox: Outbox;
  private readonly lock = new LockScreen((holder) => void this.heldBy(holder));
  private device: DeviceFacts | null = null;
  private holder: Holder | null = null;
  private card: LocalCard | null = null;
  private place: Place = { card: null, step: null };
  private refusedForm: Shown['refused'] = null;
  private said = '';
  private storage: string | null = null;
  private nearlyFull = false;
  private unsaved: readonly Unsaved[] = [];
  private queue: OutboxState = { waiting: 0, trouble: null, isSending: false };
  private away: Trouble | null = null;
  private idle: ReturnType<typeof setTimeout> | undefined;
  private alarm: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly store: Store) {
    this.screen = new TabletScreen((id) => store.picture(id));
    this.outbox = new Outbox(store, server, {
      changed: () => void this.showSent(),
      empty: () => void this.contact(),
      offsetMs: () => this.clock.offset,
      later: (afterMs) => {
        clearTimeout(this.alarm);
        this.alarm = setTimeout(() => this.outbox.nudge(), afterMs);
      },
    });
  }

  /** @returns whether the tablet has what it takes to show this place by itself. */
  async open(place: Place): Promise<boolean> {
    this.device = (await this.store.device()) ?? null;
    this.holder = await this.store.holder();
    if (this.device) this.clock.remember({ offsetMs: this.device.offsetMs, lastReadAt: await this.store.lastReadAt() });
    await this.contact();
    setInterval(() => document.visibilityState === 'visible' && void this.contact(), REFRESH_MS);
    return this.goTo(place);
  }

  async goTo(place: Place): Promise<boolean> {
    this.place = place;
    this.refusedForm = null;
    await this.load();
    if (!this.device || (place.card !== null && !this.card)) return false;
    await this.draw();
    if (!this.holder) this.askWho();
    this.touched();
    return true;
  }

  /** Fetches the day and sends what waits. Where the server does not answer, what is here stays. */
  async contact(): Promise<void> {
    const answer = await server.day();
    this.away = answer.ok ? null : answer.trouble;
    if (answer.ok) {
      const { cards, lastSeq, who, now, tablet, timeZone, onePersonSite, people } = answer.value;
      this.clock.meet(now);
      this.device = { tablet, timeZone, onePersonSite, people, offsetMs: this.clock.offset, contactAt: now };
      await this.store.keepDay(this.device, { sheets: cards, lastSeq }).catch((error: unknown) => (this.storage = cantBeKept(error)));
      if (who && who.signIn !== this.holder?.signIn) await this.hold({ staffId: who.staffId, signIn: who.signIn });
      if (this.place.card !== null && this.card) {
        await this.load();
        await this.draw();
      }
    }
    this.nearlyFull = await isNearlyFull();
    this.outbox.nudge();
  }

  /** A form of the card. */
  async act(form: HTMLFormElement, button: HTMLElement | null): Promise<void> {
    const { device, holder, card } = this;
    if (!device || !card) return;
    if (!holder) return this.askWho();
    const fields = fieldsOf(form, button);
    const name = fields['_form'] ?? '';
    try {
      const photo = await this.photoOf(form, { card: card.sheet.row.id, holder, fields });
      const act = actFromForm(card, fields, { device, holder, now: this.clock.now(), photoId: photo?.id ?? null });
      if (!act.ok) {
        this.refusedForm = act;
        await this.draw();
        document.querySelector<HTMLElement>('.error-summary')?.focus();
        return;
      }
      const action = await this.store.put(act.action, { signIn: holder.signIn, offsetMs: this.clock.offset, photo });
      this.storage = null;
      this.card = withAction(card, action);
      this.refusedForm = null;
      this.said = '';
      if (act.isFinished) this.place = { ...this.place, step: null };
      this.queue = { ...this.queue, waiting: this.queue.waiting + (photo ? 2 : 1) };
      await this.draw(name);
      if (act.isFinished) document.getElementById('work')?.focus({ preventScroll: false });
      this.outbox.nudge();
    } catch (error) {
      this.storage = cantBeKept(error);
      this.refusedForm = refused(name, fields, [{ field: '', message: `${this.storage} What you typed is still here.` }]);
      await this.draw();
    } finally {
      button?.removeAttribute('aria-busy');
    }
  }

  private async photoOf(
    form: HTMLFormElement,
    { card, holder, fields }: { card: string; holder: Holder; fields: Readonly<Record<string, string>> },
  ): Promise<WaitingPhoto | null> {
    const file = new FormData(form).get('photo');
    if (!(file instanceof File) || file.size === 0) return null;
    const { bytes, takenAt } = await shrinkPhoto(file);
    const at = new Date(takenAt.getTime() + this.clock.offset).toISOString();
    const words = fields['photoWords'] ?? fields['found'] ?? '';
    return {
      type: 'photo',
      id: newId(),
      card,
      bytes,
      by: holder.staffId,
      signIn: holder.signIn,
      step: fields['step'] ?? 'card',
      words,
      takenAt: at,
    };
  }

  async seen(id: string): Promise<void> {
    await this.store.seen(id);
    await this.showSent();
    await this.draw();
  }

  /** Whether a page of the server can be asked for just now; else says that it can't. */
  async canLeave(what: string): Promise<boolean> {
    if (this.away === null && navigator.onLine) return true;
    this.said = `“${what}” needs the workshop’s server, and it does not answer. The card goes on here.`;
    await this.draw();
    return false;
  }

  get isAway(): boolean {
    return this.away !== null || !navigator.onLine;
  }

  /** Somebody is working: the time until it locks begins anew. */
  touched(): void {
    clearTimeout(this.idle);
    this.idle = setTimeout(() => void this.lockNow(), IDLE_MS);
  }

  async lockNow(): Promise<void> {
    if (this.lock.isShown || !this.device) return;
    await this.hold(null);
    void server.lock();
    this.askWho();
  }

  private askWho(): void {
    if (this.device && !this.lock.isShown) this.lock.show(this.device, { isAway: this.isAway });
  }

  private async heldBy(holder: Holder): Promise<void> {
    await this.hold(holder);
    await this.draw();
    this.touched();
    void this.contact();
  }

  private async hold(holder: Holder | null): Promise<void> {
    this.holder = holder;
    await this.store.hold(holder).catch((error: unknown) => (this.storage = cantBeKept(error)));
  }

  private async load(): Promise<void> {
    const sheet = this.place.card === null ? undefined : await this.store.sheet(this.place.card);
    const waiting: Action[] = sheet ? actionsOf(await this.store.waiting(), sheet.row.id) : [];
    this.card = sheet && this.device ? openSheet(sheet, waiting, this.device.onePersonSite) : null;
    this.unsaved = await this.store.unsaved();
    this.queue = await this.outbox.state();
  }

  private async draw(but?: string): Promise<void> {
    const shown = this.shown();
    if (!shown) return;
    if (this.card) this.screen.card(this.card, shown, but);
    else if (this.place.card === null) this.screen.cars(await this.store.sheets(), shown);
  }

  private async showSent(): Promise<void> {
    this.queue = await this.outbox.state();
    this.unsaved = await this.store.unsaved();
    const shown = this.shown();
    if (shown) this.screen.sent(shown);
  }

  private shown(): Shown | null {
    const { device, holder, place, refusedForm, said, unsaved, storage, clock } = this;
    if (!device) return null;
    const outbox = { ...this.queue, trouble: this.queue.trouble ?? this.away };
    return {
      ...{ device, holder, stepKey: place.step, now: clock.now(), refused: refusedForm, said, outbox, unsaved, storage },
      ...{ isNearlyFull: this.nearlyFull, clock: clock.words() },
    };
  }
}
