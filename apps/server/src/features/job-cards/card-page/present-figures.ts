import type { FigureName, Step } from '#libs/checklist';
import { compareStrength, shownProtection } from '#libs/coolant';
import { formatFigure, formatTemperature } from '#libs/units';
import { dateText } from '../../../web/dates.ts';
import type { CardFact } from '../card-known.ts';
import type { MissingFigure, RefillRecipe } from '../card-figures/refill-recipe.ts';
import type { CardPage, FigureView } from './card-view.types.ts';
import { plain } from './evidence-words.ts';

export interface FiguresView {
  figures: FigureView[];
  notes: string[];
}

const ASKS: Readonly<Record<MissingFigure, string>> = {
  capacity: 'what the system holds',
  drained: 'how much was drained',
  strength: 'how strong the coolant is that stays in the block',
  product: 'which coolant is on the shelf (Office, coolant products)',
  label: 'what the label of the ready-mixed coolant says of its freezing point',
};

/** This car's own figures, in place. What nobody has stated is asked for and never made up. */
export function presentFigures(page: CardPage, step: Step): FiguresView {
  const views = (step.figures ?? []).map((name) => figureOf(page, step, name));
  return { figures: views.flatMap(({ figures }) => figures), notes: [...views.flatMap(({ notes }) => notes), ...opening(page, step)] };
}

function figureOf(page: CardPage, step: Step, name: FigureName): FiguresView {
  switch (name) {
    case 'capacity':
      return capacity(page);
    case 'drainVolume':
      return drainVolume(page, step);
    case 'tray':
      return tray(page);
    case 'recipe':
      return recipe(page, step);
    case 'tolerance':
      return tolerance(page);
    case 'torque':
      return { figures: [], notes: torqueNotes(page) };
  }
}

function capacity({ figures, timeZone }: CardPage): FiguresView {
  const [newest, ...others] = figures.capacities;
  if (newest?.figure == null) return { figures: [], notes: ['What this system holds is not known yet.'] };
  const said = (fact: CardFact): string =>
    [fact.words, fact.source, `${fact.enteredBy} ${dateText(fact.enteredAt, timeZone)}`].filter((text) => text !== '').join(', ');
  const differing = others.filter(({ figure }) => figure !== newest.figure);
  const notes = [
    `The system holds ${plain(newest.figure)} L: ${said(newest)}.`,
    ...differing.map((fact) => `Also stated: ${plain(fact.figure ?? 0)} L, ${said(fact)}. The newest is reckoned with.`),
  ];
  return { figures: [], notes };
}

function drainVolume({ figures }: CardPage, step: Step): FiguresView {
  const { capacityL, fill } = figures;
  if (step.evidence.kind === 'jugs' || capacityL === null) return { figures: [], notes: [] };
  const mostL = Math.max(0, capacityL - Math.max(0, fill.missingL ?? 0));
  const said = fill.missingL === null ? 'what the system holds' : 'what it holds less what was missing';
  return { figures: [{ value: plain(mostL), unit: 'L', how: 'computed', word: 'can come out at most', said, small: true }], notes: [] };
}

function tray({ figures }: CardPage): FiguresView {
  if (figures.trayL === null) return { figures: [], notes: ['Take a tray that holds the whole system: its litres are not known yet.'] };
  return {
    figures: [
      { value: String(figures.trayL), unit: 'L', how: 'computed', word: 'tray or larger', said: 'with room to carry it', small: true },
    ],
    notes: [],
  };
}

function recipe(page: CardPage, step: Step): FiguresView {
  const { recipe: found, product, residual } = page.figures;
  if (found.kind === 'refused') return { figures: [], notes: [found.why] };
  if (found.kind === 'asks') {
    return { figures: [], notes: [`For the recipe of this car say first: ${found.missing.map((name) => ASKS[name]).join('; ')}.`] };
  }
  const { additiveL, waterL, resultFreezingPointC } = found.recipe;
  if (step.evidence.kind === 'jugs' && step.evidence.fill !== 'first-fill') return { figures: [], notes: [sameMixture(found)] };
  const litres = (value: number): string => formatFigure(value, 2);
  const freezes = formatFigure(shownProtection(resultFreezingPointC, { unit: '°C' }), 0);
  const amounts: FigureView[] = [
    {
      value: litres(additiveL),
      unit: 'L',
      how: 'computed',
      word: found.isReadyMixed ? 'ready-mixed' : 'product',
      said: found.productName,
      small: true,
    },
    ...(waterL > 0
      ? [
          {
            value: litres(waterL),
            unit: 'L',
            how: 'computed',
            word: 'demineralised water',
            said: 'measured apart at 20 °C',
            small: true,
          } as const,
        ]
      : []),
    { value: freezes, unit: '°C', how: 'computed', word: 'safe to', said: residual ? `what stays: ${residual.said}` : '', small: true },
  ];
  const approval = product?.approval ? [`${product.name}: ${product.approval}. The vehicle maker’s approval counts, not the colour.`] : [];
  return { figures: amounts, notes: step.key === 'strength' ? compared(page) : approval };
}

/** Topped up with the mixture of the first fill. */
function sameMixture({ recipe: { additiveL, waterL } }: Extract<RefillRecipe, { kind: 'ready' }>): string {
  const share = (100 * additiveL) / (additiveL + waterL);
  return `Top up with the mixture of the first fill: in 100 mL ${formatFigure(share, 0)} mL of product and ${formatFigure(100 - share, 0)} mL of water.`;
}

/** The reading after the run beside the computed strength. */
function compared({ state, figures }: CardPage): string[] {
  const read = state.facts.numbers['strengthFreezingC'];
  if (!read || figures.recipe.kind !== 'ready' || !figures.product) return [];
  const found = compareStrength({
    glycol: figures.product.glycol,
    computed: { freezingPointC: figures.recipe.recipe.resultFreezingPointC },
    measured: { freezingPointC: read.value },
  });
  return found.ok ? [`Read ${formatTemperature(read.value, { unit: '°C', decimals: 1 })}. ${found.text}`] : [found.problem.message];
}

function tolerance({ figures, state }: CardPage): FiguresView {
  const { account, fillToleranceMl, topUpToleranceMl } = figures;
  const settings = `Tolerances here: ${fillToleranceMl} mL for the fill, ${topUpToleranceMl} mL next morning; “about” widens them.`;
  if (!account || account.shortfall === 'not-yet') return { figures: [], notes: [settings] };
  const inL = `${formatFigure(account.filledL, 2)} of ${formatFigure(account.spaceL, 2)} L`;
  const said = `tolerance ${formatFigure(account.shortfallToleranceL, 2)} L`;
  return {
    figures: [{ value: inL, how: 'computed', word: 'went in', said, small: true }],
    // While it is still being poured, what is short is only what is to come.
    notes: state.steps['first-fill']?.state === 'done' ? account.warnings.map(({ text }) => text) : [],
  };
}

function torqueNotes({ figures, timeZone }: CardPage): string[] {
  const stated = figures.torques.map(
    ({ figure, unit, words, source, enteredBy, enteredAt }) =>
      `Stated for this car: ${[figure === null ? '' : `${plain(figure)} ${unit}`, words, source].filter((text) => text !== '').join(', ')} (${enteredBy} ${dateText(enteredAt, timeZone)}).`,
  );
  const before = figures.earlierTorques.map(
    ({ setAt, unit, document, page, jobNumber }) =>
      `On this engine before: ${plain(setAt)} ${unit}, ${document}, page ${page} (job ${jobNumber}).`,
  );
  const known = [...stated, ...before];
  return known.length === 0
    ? ['No torque is on record for this engine: read it in the vehicle maker’s manual.']
    : [...known, 'The manual rules: look it up again before you set the wrench.'];
}

/** What is missing on arrival belongs to the recipe: said where it was not noted. */
function opening({ figures: { fill }, state }: CardPage, step: Step): string[] {
  if (step.evidence.kind !== 'jugs' || step.evidence.fill !== 'first-fill') return [];
  if (fill.isTankEmpty) return ['The tank was empty on arrival: how much was missing is not known, so more may go in than reckoned.'];
  return state.steps['level-on-arrival']?.state === 'open' ? ['The level on arrival was not noted: nothing is reckoned as missing.'] : [];
}
