import type { JugLiquid, JugsData } from '#libs/charts';
import type { Jug, Recipe } from '#libs/coolant';
import type { UnitPreference } from '#libs/units';
import type { BenchContext } from '../bench-context.ts';
import type { ReadForm } from '../form/bench-field.ts';
import { saidFigure } from '../units/measure.ts';
import type { ReadyRefill } from './reckon-refill.ts';

export interface JugSize {
  readonly jugMl: number;
  readonly markMl: number;
}

/** One liquid in its turn, shared out over jugs. */
export interface Liquid {
  readonly key: 'additive' | 'water';
  readonly liquid: JugLiquid;
  readonly what: string;
  readonly amountsMl: readonly number[];
  readonly totalL: number;
  /** Before rounding to the marks. */
  readonly exactL: number;
}

const ML_PER_L = 1000;
const LEAST_ML = 0.5;

export function jugSize({ figures }: ReadForm, { workshop }: BenchContext): JugSize {
  const { jug, mark = workshop.jugMarkMl } = figures;
  return { jugMl: jug === undefined ? workshop.jugMl : jug * ML_PER_L, markMl: mark };
}

/** So much to a jug, up to its last mark, and the rest in one more. */
function fullJugs(totalMl: number, { jugMl, markMl }: JugSize): readonly number[] {
  const lastMarkMl = Math.floor(jugMl / markMl + 1e-9) * markMl;
  const full = Math.floor(totalMl / lastMarkMl + 1e-9);
  const restMl = totalMl - full * lastMarkMl;
  return [...Array.from({ length: full }, () => lastMarkMl), ...(restMl > LEAST_ML ? [restMl] : [])];
}

/** Additive and water share the jugs of an empty system; onto an old filling each is poured for itself. */
function amountsMl({ roundedJugs, residualL }: Recipe, size: JugSize, part: keyof Jug): readonly number[] {
  const shared = (roundedJugs?.jugs ?? []).map((jug) => jug[part]);
  if (residualL <= 0) return shared.filter((amount) => amount > LEAST_ML);
  return fullJugs(
    shared.reduce((sum, amount) => sum + amount, 0),
    size,
  );
}

/** What to pour, liquid by liquid, in whole marks; what is not poured is left out. */
export function liquidsToPour({ recipe, productName, isReadyMixed }: ReadyRefill, size: JugSize): readonly Liquid[] {
  const liquid = (key: Liquid['key'], words: Pick<Liquid, 'liquid' | 'what' | 'exactL'>): Liquid => {
    const amounts = amountsMl(recipe, size, key === 'additive' ? 'additiveMl' : 'waterMl');
    return { key, ...words, amountsMl: amounts, totalL: amounts.reduce((sum, amount) => sum + amount, 0) / ML_PER_L };
  };
  return [
    liquid('additive', { liquid: isReadyMixed ? 'mixed' : 'concentrate', what: productName, exactL: recipe.additiveL }),
    liquid('water', { liquid: 'water', what: 'demineralised water', exactL: recipe.waterL }),
  ].filter((found) => found.amountsMl.length > 0);
}

/** The jugs of one liquid for drawing; who thinks in quarts finds them below each jug. */
export function jugsOf({ liquid, amountsMl: amounts }: Liquid, size: JugSize, units: UnitPreference): JugsData {
  return {
    ...size,
    jugs: amounts.map((amountMl, index) => ({
      liquid,
      amountMl,
      name: units.volume === 'L' ? `jug ${index + 1}` : saidFigure(amountMl / ML_PER_L, 'volume', units),
    })),
  };
}
