/** Answers while one types: asks the page itself for the figures in the form and takes over what it says, never the fields. */
const PAUSE_MS = 220;

function copyAnswer(page: Document): void {
  for (const part of document.querySelectorAll<HTMLElement>('[data-live]')) {
    const fresh = page.querySelector<HTMLElement>(`[data-live="${part.dataset['live'] ?? ''}"]`);
    if (fresh && fresh.innerHTML !== part.innerHTML) part.replaceChildren(...fresh.childNodes);
  }
}

/** Messages, hints and how each value is known; what stands in the field is the person's. */
function copyNotes(form: HTMLFormElement, page: Document): void {
  for (const input of form.querySelectorAll<HTMLInputElement | HTMLSelectElement>('.field :is(input, select)')) {
    const fresh = page.getElementById(input.id);
    const said = document.getElementById(`${input.id}-said`);
    const freshSaid = page.getElementById(`${input.id}-said`);
    const field = input.closest('.field');
    const freshField = fresh?.closest('.field');
    if (!fresh || !said || !freshSaid || !field || !freshField) continue;
    if (said.innerHTML !== freshSaid.innerHTML) said.replaceChildren(...freshSaid.childNodes);
    field.className = freshField.className;
    if (fresh.hasAttribute('aria-invalid')) input.setAttribute('aria-invalid', 'true');
    else input.removeAttribute('aria-invalid');
  }
  const was = form.elements.namedItem('was');
  const freshWas = page.querySelector<HTMLInputElement>('form[data-answers] [name="was"]');
  if (was instanceof HTMLInputElement && freshWas) was.value = freshWas.value;
}

function addressOf(form: HTMLFormElement): string {
  const query = new URLSearchParams();
  for (const [name, value] of new FormData(form)) if (typeof value === 'string') query.append(name, value);
  return `${form.getAttribute('action') ?? location.pathname}?${query.toString()}`;
}

function tellOffline(isOffline: boolean): void {
  for (const note of document.querySelectorAll<HTMLElement>('[data-offline]')) note.hidden = !isOffline;
}

function enhance(form: HTMLFormElement): void {
  let timer: number | undefined;
  let asked: AbortController | undefined;

  async function ask(): Promise<void> {
    asked?.abort();
    asked = new AbortController();
    const address = addressOf(form);
    const reply = await fetch(address, { signal: asked.signal, headers: { accept: 'text/html' } });
    if (!reply.ok || reply.redirected) {
      form.submit(); // signed out, or the page is gone: let the browser show it
      return;
    }
    const page = new DOMParser().parseFromString(await reply.text(), 'text/html');
    document.querySelector('.error-summary')?.remove();
    tellOffline(false);
    copyAnswer(page);
    copyNotes(form, page);
    history.replaceState(null, '', address);
    for (const back of document.querySelectorAll<HTMLInputElement>('[data-back]')) back.value = address;
  }

  form.addEventListener('input', () => {
    window.clearTimeout(timer);
    timer = window.setTimeout(() => {
      ask().catch((error: unknown) => {
        // A newer question took its place, or the network is away: the button still works.
        if (!(error instanceof DOMException && error.name === 'AbortError')) tellOffline(true);
      });
    }, PAUSE_MS);
  });
}

for (const form of document.querySelectorAll<HTMLFormElement>('form[data-answers]')) enhance(form);
