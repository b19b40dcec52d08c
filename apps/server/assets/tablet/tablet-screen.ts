import { draw } from 'views-for-browser';
import type { Action } from '#libs/checklist';
import { STAGE_WORDS } from '#libs/checklist';
import { presentCard } from '../../src/features/job-cards/card-page/present-card.ts';
import { EMPTY_FORM, type FormState } from '../../src/platform/pages/form-state.ts';
import { timeText } from '../../src/web/dates.ts';
import { urls } from '../../src/web/urls.ts';
import { type LocalCard, pageOfCard } from './card-from-sheet.ts';
import type { DeviceFacts, Holder, StoredSheet, Unsaved } from './device-types.ts';
import { redraw } from './keep-typed.ts';
import type { OutboxState } from './outbox.ts';
import { type SentView, sentWords } from './sent-words.ts';
import { endOffers, showClocks } from './show-clocks.ts';
import { showKeypad } from './show-keypad.ts';
import { showVerdict } from './show-verdict.ts';

/** Everything that the page shows besides the card itself. */
export interface Shown {
  device: DeviceFacts;
  holder: Holder | null;
  stepKey: string | null;
  now: Date;
  /** The form that was refused, with what was typed. */
  refused: { form: string; state: FormState } | null;
  said: string;
  outbox: OutboxState;
  unsaved: readonly Unsaved[];
  storage: string | null;
  isNearlyFull: boolean;
  clock: string;
}

const lightNow = (): string => document.documentElement.dataset['light'] ?? 'day';

/** Draws what the tablet has, by the server's own presenter and views. */
export class TabletScreen {
  constructor(private readonly picture: (id: string) => Promise<ArrayBuffer | undefined>) {}

  card(card: LocalCard, shown: Shown, but?: string): void {
    const page = pageOfCard(card, { ...shown, formState: (name) => (shown.refused?.form === name ? shown.refused.state : EMPTY_FORM) });
    const view = presentCard({ ...page, deviceId: shown.device.tablet.id }, lightNow());
    const unsaved = shown.unsaved.map(({ id, words, why }) => ({ id, words, why }));
    const sent = { ...sentOf(shown), lights: view.lights };
    this.put(`${draw('card', { ...view, said: shown.said, unsaved })}${draw('sent', sent)}`, but);
    document.title = `${view.title} · Runwarm`;
    showKeypad();
    showVerdict();
    showClocks();
    endOffers();
    void this.showOwnPictures();
  }

  /** The cars whose cards are on the tablet, where the server's own list can't be had. */
  cars(sheets: readonly StoredSheet[], shown: Shown): void {
    const cars = sheets.map(({ row }) => ({
      key: row.keyTag === null ? '–' : String(row.keyTag),
      car: `${row.vehicle.make} ${row.vehicle.model}`,
      who: `${row.customer.name}, ${row.vehicle.registration}`,
      href: urls.card(row.id),
      stage: { name: row.stage, word: STAGE_WORDS[row.stage as keyof typeof STAGE_WORDS] ?? row.stage },
    }));
    const lead =
      shown.said !== '' ? shown.said : 'The workshop’s server does not answer. These cards can be worked on; the rest waits until it does.';
    this.put(`${draw('cars', { lead, cars })}${draw('sent', sentOf(shown))}`);
    document.title = 'Cars on this tablet · Runwarm';
  }

  sent(shown: Shown): void {
    const footer = document.querySelector('footer.sent');
    const lights = footer?.querySelector('form.light');
    if (!footer) return;
    footer.outerHTML = draw('sent', sentOf(shown));
    if (lights) document.querySelector('footer.sent')?.append(lights);
  }

  private put(html: string, but?: string): void {
    const box = document.querySelector<HTMLElement>('body > .card');
    if (box) redraw(box, html, but === undefined ? {} : { but });
  }

  /** Photos that only this tablet has yet. */
  private async showOwnPictures(): Promise<void> {
    for (const image of document.querySelectorAll<HTMLImageElement>('.photos img')) {
      const id = /\/photos\/([0-9a-f-]{36})\/small$/.exec(image.getAttribute('src') ?? '')?.[1];
      const bytes = id === undefined ? undefined : await this.picture(id);
      if (!bytes) continue;
      image.onload = () => URL.revokeObjectURL(image.src);
      image.src = URL.createObjectURL(new Blob([bytes], { type: 'image/jpeg' }));
    }
  }
}

function sentOf({ outbox, unsaved, storage, isNearlyFull, clock, device }: Shown): SentView {
  return sentWords({
    ...{
      waiting: outbox.waiting,
      trouble: outbox.trouble,
      isSending: outbox.isSending,
      unsaved: unsaved.length,
      storage,
      isNearlyFull,
      clock,
    },
    survivesReload: navigator.serviceWorker?.controller != null,
    contactAt: timeText(new Date(device.contactAt), device.timeZone),
  });
}

export const actionsOf = (entries: readonly { type: string; card: string; action?: Action }[], card: string): Action[] =>
  entries.flatMap((entry) => (entry.type === 'action' && entry.card === card && entry.action ? [entry.action] : []));
