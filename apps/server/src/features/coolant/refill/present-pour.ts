import { jugs as drawJugs, type JugLiquid, type JugToPour } from '#libs/charts';
import type { Jug, Recipe } from '#libs/coolant';
import type { UnitPreference } from '#libs/units';
import { drawn, type DrawnView } from '../drawn.ts';
import { measureOf, plainFigure, saidFigure } from '../units/measure.ts';
import type { RefillAnswer } from './reckon-refill.ts';

type Ready = Extract<RefillAnswer, { kind: 'ready' }>;

/** One liquid with its jugs, in its turn. */
export interface PourView {
  readonly amount: string;
  readonly unit: string;
  readonly what: string;
  readonly exact: string;
  readonly drawing: DrawnView;
}

export interface JugSize {
  readonly jugMl: number;
  readonly markMl: number;
}

const ML_PER_L = 1000;
const LEAST_ML = 0.5;

/** So much to a jug, up to its last mark, and the rest in one more. */
function fullJugs(totalMl: number, { jugMl, markMl }: JugSize): readonly number[] {
  const lastMarkMl = Math.floor(jugMl / markMl + 1e-9) * markMl;
  const full = Math.floor(totalMl / lastMarkMl + 1e-9);
  const restMl = totalMl - full * lastMarkMl;
  return [...Array.from({ length: full }, () => lastMarkMl), ...(restMl > LEAST_ML ? [restMl] : [])];
}

/** Additive and water share the jugs of an empty system; onto an old filling each is poured for itself. */
function amountsMl(recipe: Recipe, size: JugSize, part: keyof Jug): readonly number[] {
  const shared = recipe.roundedJugs?.jugs ?? [];
  if (recipe.residualL <= 0) return shared.map((jug) => jug[part]).filter((amountMl) => amountMl > LEAST_ML);
  return fullJugs(
    shared.reduce((sum, jug) => sum + jug[part], 0),
    size,
  );
}

interface Liquid {
  readonly key: string;
  readonly liquid: JugLiquid;
  readonly what: string;
  readonly amounts: readonly number[];
  readonly exactL: number;
}

function presentLiquid({ key, liquid, what, amounts, exactL }: Liquid, size: JugSize, units: UnitPreference): PourView {
  const totalL = amounts.reduce((sum, amount) => sum + amount, 0) / ML_PER_L;
  const { unit, decimals, shown } = measureOf('volume', units);
  const toPour: JugToPour[] = amounts.map((amountMl, index) => ({
    liquid,
    amountMl,
    name: units.volume === 'L' ? `jug ${index + 1}` : saidFigure(amountMl / ML_PER_L, 'volume', units),
  }));
  return {
    amount: plainFigure(shown(totalL), decimals),
    unit,
    what,
    exact: `exactly ${shown(exactL).toFixed(3)} ${unit}`,
    drawing: drawn(`jugs-${key}`, { wide: widthFor(amounts.length, 3), narrow: widthFor(amounts.length, 2) }, (options) =>
      drawJugs({ ...size, jugs: toPour }, { ...options, ground: 'sheet' }),
    ),
  };
}

/** As wide as the jugs of one row need, so that none is blown up. */
const widthFor = (count: number, most: number): number => Math.max(200, 62 + 128 * Math.min(Math.max(1, count), most));

/** What to pour, liquid by liquid, in whole marks. */
export function presentPour({ recipe, productName, isReadyMixed }: Ready, size: JugSize, units: UnitPreference): readonly PourView[] {
  const additive: Liquid = {
    key: 'additive',
    liquid: isReadyMixed ? 'mixed' : 'concentrate',
    what: productName,
    amounts: amountsMl(recipe, size, 'additiveMl'),
    exactL: recipe.additiveL,
  };
  const water: Liquid = {
    key: 'water',
    liquid: 'water',
    what: 'demineralised water',
    amounts: amountsMl(recipe, size, 'waterMl'),
    exactL: recipe.waterL,
  };
  return [additive, water].filter(({ amounts }) => amounts.length > 0).map((liquid) => presentLiquid(liquid, size, units));
}
