type Control = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

const CONTROLS = 'input:not([type="hidden"]), select, textarea';

/** Told apart from the same field of another form or step. */
function keyOf(control: Control): string {
  const form = control.form;
  const marks = ['_form', 'step', 'act'].map(
    (name) => form?.querySelector<HTMLInputElement>(`input[type="hidden"][name="${name}"]`)?.value ?? '',
  );
  return [...marks, control.name, control.type === 'radio' || control.type === 'checkbox' ? control.value : ''].join('|');
}

function isTouched(control: Control): boolean {
  if (control instanceof HTMLSelectElement) return [...control.options].some((option) => option.selected !== option.defaultSelected);
  if (control.type === 'file') return ((control as HTMLInputElement).files?.length ?? 0) > 0;
  if (control.type === 'radio' || control.type === 'checkbox') {
    const box = control as HTMLInputElement;
    return box.checked !== box.defaultChecked;
  }
  return control.value !== control.defaultValue;
}

/**
 * Draws a part of the page anew without losing what a person has typed, chosen or opened in it, nor where they are.
 *
 * @param but the form that was just sent: its fields begin afresh
 */
export function redraw(box: HTMLElement, html: string, { but }: { but?: string } = {}): void {
  const typed = new Map([...box.querySelectorAll<Control>(CONTROLS)].filter(isTouched).map((control) => [keyOf(control), control]));
  const focused = document.activeElement instanceof HTMLElement && box.contains(document.activeElement) ? document.activeElement.id : '';
  const open = new Set([...box.querySelectorAll<HTMLDetailsElement>('details[open]')].map(summaryOf));
  const scrolls = ['.steps', '.work'].map((selector) => [selector, box.querySelector(selector)?.scrollTop ?? 0] as const);
  box.innerHTML = html; // our own views, every value in them escaped
  for (const control of box.querySelectorAll<Control>(CONTROLS)) {
    const before = typed.get(keyOf(control));
    if (!before || formName(control) === but) continue;
    putBack(control, before);
  }
  for (const details of box.querySelectorAll<HTMLDetailsElement>('details:not([open])')) {
    if (
      open.has(summaryOf(details)) &&
      details.querySelector('form') &&
      !details.querySelector(`input[name="_form"][value="${but ?? ''}"]`)
    ) {
      details.open = true;
    }
  }
  for (const [selector, top] of scrolls) box.querySelector(selector)?.scrollTo({ top });
  if (focused !== '') document.getElementById(focused)?.focus({ preventScroll: true });
}

const summaryOf = (details: HTMLDetailsElement): string => details.querySelector('summary')?.textContent?.trim() ?? '';

const formName = (control: Control): string => control.form?.querySelector<HTMLInputElement>('input[name="_form"]')?.value ?? '';

function putBack(control: Control, before: Control): void {
  if (control.type === 'file') return control.replaceWith(before); // a chosen file can't be copied
  if (control instanceof HTMLInputElement && (control.type === 'radio' || control.type === 'checkbox')) {
    control.checked = (before as HTMLInputElement).checked;
    return;
  }
  control.value = before.value;
}
