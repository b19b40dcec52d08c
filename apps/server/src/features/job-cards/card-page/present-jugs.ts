import type { Step, StepState } from '#libs/checklist';
import { jugs as drawJugs, type JugToPour } from '#libs/charts';
import { shownProtection } from '#libs/coolant';
import { formatFigure } from '#libs/units';
import type { PlannedJug } from '../card-figures/refill-recipe.ts';
import { cardForm } from './card-form.ts';
import type { CardPage, FormView, JugsView } from './card-view.types.ts';
import { amountWords, plain } from './evidence-words.ts';

const WIDTH_PX = 560;
/** More jugs than this are a mistake in a figure, not a drawing. */
const MOST_DRAWN = 12;

/** The jugs of the recipe with those that are poured, and the next one as one tap; null where no jugs are planned here. */
export function presentJugs(page: CardPage, step: Step, state: StepState): JugsView | null {
  const { recipe } = page.figures;
  if (step.evidence.kind !== 'jugs' || step.evidence.fill !== 'first-fill' || recipe.kind !== 'ready') return null;
  const poured = state.history.filter((one) => one.kind === 'pour-jug' && one.round === state.round && !one.takenBack).length;
  const next = recipe.jugs[poured];
  return {
    drawing: drawing(page, recipe.jugs, poured),
    next: next ? pourForm(page, step, { jug: next, number: poured + 1, of: recipe.jugs.length }) : null,
    nextWords: next ? howToPour(next) : `All ${recipe.jugs.length} jugs of the recipe are in.`,
    sure: sureWords(page),
    assumed: [...recipe.recipe.assumptions, page.figures.residual ? `What stays: ${page.figures.residual.said}.` : '']
      .filter((text) => text !== '')
      .join(' '),
    warnings: recipe.recipe.warnings.map(({ text }) => text),
  };
}

function drawing({ figures }: CardPage, jugs: readonly PlannedJug[], poured: number): JugsView['drawing'] {
  if (jugs.length === 0 || jugs.length > MOST_DRAWN) return null;
  const { svg, table } = drawJugs(
    { jugMl: figures.jugMl, markMl: figures.markMl, jugs: jugs.map((jug, index) => toDraw(jug, index < poured)) },
    { palette: 'page', idPrefix: 'jugs', widthPx: WIDTH_PX, ground: 'sheet' },
  );
  return { svg, table };
}

function toDraw({ productMl, waterMl, keptMl }: PlannedJug, isPoured: boolean): JugToPour {
  const amountMl = productMl + waterMl + keptMl;
  if (keptMl > 0) return { liquid: 'mixed', amountMl, isPoured, name: 'kept' };
  if (waterMl === 0) return { liquid: 'concentrate', amountMl, isPoured };
  if (productMl === 0) return { liquid: 'water', amountMl, isPoured };
  return { liquid: 'mixed', amountMl, isPoured, name: `${plain(productMl)} + ${plain(waterMl)}` };
}

function howToPour({ productMl, waterMl, keptMl }: PlannedJug): string {
  if (keptMl > 0) return `Kept coolant of this car to the ${plain(keptMl)} mL mark.`;
  if (waterMl === 0) return `Product to the ${plain(productMl)} mL mark.`;
  if (productMl === 0) return `Demineralised water to the ${plain(waterMl)} mL mark.`;
  return `Product to the ${plain(productMl)} mL mark, then demineralised water up to ${plain(productMl + waterMl)} mL.`;
}

function pourForm(page: CardPage, step: Step, { jug, number, of }: { jug: PlannedJug; number: number; of: number }): FormView {
  return cardForm(page, {
    name: 'pour-next',
    act: 'pour',
    place: step.key,
    hidden: { productMl: String(jug.productMl), waterMl: String(jug.waterMl), keptMl: String(jug.keptMl) },
    buttons: [{ label: `Jug ${number} of ${of} is in: ${amountWords(jug)}`, look: 'main go' }],
  });
}

function sureWords({ figures: { recipe } }: CardPage): string {
  if (recipe.kind !== 'ready') return '';
  const { resultVolumePercent, resultFreezingPointC, roundedJugs } = recipe.recipe;
  const result = roundedJugs ?? { resultVolumePercent, resultFreezingPointC };
  const safe = formatFigure(shownProtection(result.resultFreezingPointC, { unit: '°C' }), 0);
  const rounded = roundedJugs ? `, in marks of ${plain(roundedJugs.markMl)} mL` : '';
  return `${formatFigure(result.resultVolumePercent, 1)} % of pure glycol by volume${rounded}: safe to ${safe} °C by the published table, rounded towards warmer. The strength read after the run is what counts.`;
}
