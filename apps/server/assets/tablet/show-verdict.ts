import { type ColdReading, SAFE_TO_OPEN_LIMIT_C } from '#libs/checklist';
import { readingRule } from '#libs/charts';
import { coldVerdict, type ColdVerdictWords, PRESSURE_SIGNS } from '../../src/features/job-cards/card-page/cold-verdict.ts';

interface Told {
  instruments: Record<string, { expandedU: number; method: ColdReading['method'] }>;
  bareMetal: string[];
}

const RULE = { palette: 'page', idPrefix: 'cold', widthPx: 560, ground: 'sheet' } as const;

/** What the reading comes to while it is typed: the rule, the peg and the button's words. The server judges for itself. */
export function showVerdict(): void {
  const box = document.querySelector<HTMLElement>('.reading[data-told]:not([data-told=""])');
  const form = box?.closest('form');
  if (!box || !form) return;
  const told = JSON.parse(box.dataset['told'] ?? '{}') as Told;
  // The digit is painted first; the drawing follows with the next frame, once for however many taps.
  let isDue = false;
  const show = (): void => {
    if (isDue) return;
    isDue = true;
    requestAnimationFrame(() =>
      setTimeout(() => {
        isDue = false;
        draw(box, form, told);
      }),
    );
  };
  form.addEventListener('input', show);
  form.addEventListener('change', show);
  if (new FormData(form).get('tempC') !== '') show();
}

function draw(box: HTMLElement, form: HTMLFormElement, told: Told): void {
  const data = new FormData(form);
  const typed = text(data, 'tempC').replace(',', '.');
  const instrument = told.instruments[text(data, 'instrument')];
  const tempC = typed === '' ? Number.NaN : Number(typed);
  put(box, '[data-doubt]', instrument ? `± ${instrument.expandedU.toFixed(1)}` : '');
  if (!instrument || !Number.isFinite(tempC)) {
    box.querySelector('[data-verdict]')?.replaceChildren();
    label(form, 'Record the reading', true);
    return;
  }
  drawRule(tempC, instrument.expandedU);
  const signs = Object.entries(PRESSURE_SIGNS).find(([sign]) => sign === text(data, 'signs'))?.[1];
  const place = text(data, 'place');
  if (!signs || place === '') return;
  const { method, expandedU: expandedUncertaintyC } = instrument;
  const verdict = coldVerdict({ tempC, expandedUncertaintyC, method, onBareMetal: told.bareMetal.includes(place), ...signs });
  showPeg(box, verdict);
  const isSafe = verdict.verdict === 'fits';
  label(form, `Record ${tempC.toFixed(1)} °C${isSafe ? ' and pass the hold point' : ': the hold point stays shut'}`, isSafe);
}

function text(data: FormData, name: string): string {
  const value = data.get(name);
  return typeof value === 'string' ? value : '';
}

function drawRule(tempC: number, uncertaintyC: number): void {
  const rule = document.querySelector('[data-rule]');
  if (!rule) return;
  const { svg } = readingRule({ limitC: SAFE_TO_OPEN_LIMIT_C, reading: { tempC, uncertaintyC } }, RULE);
  rule.innerHTML = svg; // our own drawing of two numbers
}

function showPeg(box: HTMLElement, { verdict, word, sum }: ColdVerdictWords): void {
  const place = box.querySelector('[data-verdict]');
  if (!place) return;
  const said = document.createElement('div');
  said.className = `comes-to ${verdict}`;
  said.setAttribute('role', 'status');
  said.innerHTML = `<svg class="glyph" aria-hidden="true"><use href="#peg-${verdict}" /></svg><span><b></b><span></span></span>`;
  put(said, 'b', word);
  put(said, 'span > span', sum);
  place.replaceChildren(said);
}

function label(form: HTMLFormElement, words: string, passes: boolean): void {
  put(form, '.button.go .label', words);
  form.querySelector('.button.go')?.classList.toggle('main', passes);
}

function put(within: Element, selector: string, words: string): void {
  const element = within.querySelector(selector);
  if (element) element.textContent = words;
}
