import { draw } from 'views-for-browser';
import type { DeviceFacts, Holder } from './device-types.ts';
import { server } from './server.ts';

const PIN = {
  id: 'pin',
  name: 'pin',
  label: 'PIN',
  type: 'password',
  inputmode: 'numeric',
  autocomplete: 'off',
  maxlength: 8,
  short: true,
};

interface Asked {
  error?: string;
  staffId?: string;
  /** The server can't be reached: a name is only picked. */
  isAway: boolean;
}

/**
 * Asks who holds the tablet, over whatever is on it: nothing that was typed below is touched. By PIN where the server answers; else
 * a name is picked, and what is done counts as said to be theirs until they confirm it.
 */
export class LockScreen {
  private box: HTMLElement | null = null;

  constructor(private readonly opened: (holder: Holder) => void) {}

  get isShown(): boolean {
    return this.box !== null;
  }

  show(device: DeviceFacts, asked: Asked): void {
    const card = document.querySelector<HTMLElement>('.card');
    if (card) card.inert = true;
    const box = this.box ?? document.body.appendChild(Object.assign(document.createElement('div'), { className: 'lock-over' }));
    this.box = box;
    box.innerHTML = draw('lock', viewOf(device, asked)); // our own view, every value escaped
    box.querySelector('form')?.addEventListener('submit', (event) => {
      event.preventDefault();
      const form = event.target as HTMLFormElement;
      const button = event.submitter as HTMLButtonElement | null;
      void this.answer(device, new FormData(form), { isPicked: asked.isAway || button?.name === 'without' });
    });
    box.querySelector<HTMLElement>('#lock-title')?.focus();
  }

  private async answer(device: DeviceFacts, data: FormData, { isPicked }: { isPicked: boolean }): Promise<void> {
    const staffId = text(data, 'staffId');
    if (staffId === '') return this.show(device, { isAway: isPicked, error: 'Choose who you are.' });
    if (isPicked) return this.open({ staffId, signIn: null });
    const answer = await server.signIn(staffId, text(data, 'pin'));
    if (answer.ok) return this.open({ staffId, signIn: answer.value.signIn });
    const isAway = answer.trouble === 'no-network' || answer.trouble === 'server-failed';
    // Without the server nobody can prove who they are; a wrong PIN is answered by the server.
    this.show(device, { isAway: isAway && answer.status !== 429, staffId, error: isAway && answer.why === '' ? '' : answer.why });
  }

  private open(holder: Holder): void {
    this.box?.remove();
    this.box = null;
    const card = document.querySelector<HTMLElement>('.card');
    if (card) card.inert = false;
    this.opened(holder);
  }
}

function text(data: FormData, name: string): string {
  const value = data.get(name);
  return typeof value === 'string' ? value : '';
}

function viewOf({ people, tablet }: DeviceFacts, { error, staffId, isAway }: Asked): object {
  return {
    title: 'Who are you?',
    lead: isAway
      ? 'The workshop’s server does not answer, so a PIN can’t be checked: pick your name. What you do counts as said to be yours until you confirm it by PIN.'
      : `This is the tablet “${tablet.name}”. What was typed below stays as it is.`,
    ...(error ? { error } : {}),
    people: people.map(({ id, displayName, hasPin }, index) => ({
      id: index === 0 ? 'staffId' : `who-${id}`,
      value: id,
      label: displayName,
      ...(hasPin || isAway ? {} : { note: 'no PIN yet: set one at Your secret' }),
      checked: id === staffId,
      disabled: !hasPin && !isAway,
    })),
    asksPin: !isAway,
    pin: PIN,
    button: isAway ? 'Go on' : 'Sign in',
  };
}
