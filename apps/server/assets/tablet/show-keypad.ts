/** Brings out the keys beside the large figure: without script the field is typed into. */
export function showKeypad(): void {
  for (const keypad of document.querySelectorAll<HTMLElement>('.keypad')) {
    const field = document.getElementById(keypad.dataset['for'] ?? '');
    if (!(field instanceof HTMLInputElement)) continue;
    keypad.hidden = false;
    keypad.closest('.reading')?.classList.remove('no-keys');
    field.inputMode = 'none'; // a tablet's own keyboard would cover the step
    keypad.addEventListener('click', ({ target }) => {
      const key = target instanceof Element ? target.closest<HTMLElement>('[data-key]')?.dataset['key'] : undefined;
      if (key === undefined) return;
      field.value = afterKey(field.value, key, field.maxLength);
      field.dispatchEvent(new Event('input', { bubbles: true }));
    });
  }
}

function afterKey(value: string, key: string, longest: number): string {
  if (key === 'rub-out') return value.slice(0, -1);
  const isDecimal = key === '.' || key === ',';
  if (isDecimal && /[.,]/.test(value)) return value;
  const next = isDecimal && value === '' ? `0${key}` : value + key;
  return longest > 0 && next.length > longest ? value : next;
}
