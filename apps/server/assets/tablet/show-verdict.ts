import { type ColdReading, type ColdVerdict, SAFE_TO_OPEN_LIMIT_C, safeToOpen } from '#libs/checklist';
import { readingRule } from '#libs/charts';

interface Told {
  instruments: Record<string, { expandedU: number; method: ColdReading['method'] }>;
  bareMetal: string[];
}

const RULE_PX = 560;
const VERDICTS: Readonly<Record<ColdVerdict['verdict'], { peg: string; word: string }>> = {
  safe: { peg: 'fits', word: 'Cold enough' },
  unsure: { peg: 'inconclusive', word: 'Not sure yet' },
  'too-hot': { peg: 'does-not-fit', word: 'Too hot to open' },
  pressure: { peg: 'does-not-fit', word: 'Under pressure' },
};
const SIGNS: Readonly<Record<string, Pick<ColdReading, 'pressure' | 'hose'>>> = {
  soft: { pressure: 'none', hose: 'soft' },
  'none-shown': { pressure: 'none', hose: 'not-reached' },
  hard: { pressure: 'some', hose: 'hard' },
  unsure: { pressure: 'unsure', hose: 'not-reached' },
};

/** What the reading comes to while it is typed: the rule, the peg and the button's words. The server judges for itself. */
export function showVerdict(): void {
  const box = document.querySelector<HTMLElement>('.reading[data-told]:not([data-told=""])');
  const form = box?.closest('form');
  if (!box || !form) return;
  const told = JSON.parse(box.dataset['told'] ?? '{}') as Told;
  const show = (): void => draw(box, form, told);
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
    label(form, 'Record the reading', false);
    return;
  }
  drawRule(tempC, instrument.expandedU);
  const signs = SIGNS[text(data, 'signs')];
  const place = text(data, 'place');
  if (!signs || place === '') return;
  const verdict = safeToOpen({
    tempC,
    expandedUncertaintyC: instrument.expandedU,
    method: instrument.method,
    onBareMetal: told.bareMetal.includes(place),
    ...signs,
  });
  showPeg(box, verdict);
  const isSafe = verdict.verdict === 'safe';
  label(
    form,
    isSafe ? `Record ${tempC.toFixed(1)} °C and pass the hold point` : `Record ${tempC.toFixed(1)} °C: the hold point stays shut`,
    isSafe,
  );
}

function text(data: FormData, name: string): string {
  const value = data.get(name);
  return typeof value === 'string' ? value : '';
}

function drawRule(tempC: number, uncertaintyC: number): void {
  const rule = document.querySelector('[data-rule]');
  if (!rule) return;
  const reading = { tempC, uncertaintyC };
  const { svg } = readingRule(
    { limitC: SAFE_TO_OPEN_LIMIT_C, reading },
    { palette: 'page', idPrefix: 'cold', widthPx: RULE_PX, ground: 'sheet' },
  );
  rule.innerHTML = svg; // our own drawing of two numbers
}

function showPeg(box: HTMLElement, { verdict, why }: ColdVerdict): void {
  const place = box.querySelector('[data-verdict]');
  if (!place) return;
  const { peg, word } = VERDICTS[verdict];
  const said = document.createElement('div');
  said.className = `comes-to ${peg}`;
  said.setAttribute('role', 'status');
  const glyph = `<svg class="glyph" aria-hidden="true"><use href="#peg-${peg}" /></svg>`;
  said.innerHTML = `${glyph}<span><b></b><span></span></span>`;
  put(said, 'b', word);
  put(said, 'span > span', why);
  place.replaceChildren(said);
}

function label(form: HTMLFormElement, words: string, isSafe: boolean): void {
  put(form, '.button.go .label', words);
  form.querySelector('.button.go')?.classList.toggle('main', isSafe || words === 'Record the reading');
}

function put(within: Element, selector: string, words: string): void {
  const element = within.querySelector(selector);
  if (element) element.textContent = words;
}
