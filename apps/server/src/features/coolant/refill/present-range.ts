import { rangeBar, type RangeBarData, type RangeMark } from '#libs/charts';
import { shownProtection } from '#libs/coolant';
import { formatFigure, shownTemperature, type UnitPreference } from '#libs/units';
import type { BenchContext } from '../bench-context.ts';
import { drawn, type DrawnView } from '../drawn.ts';
import type { ReadForm } from '../form/bench-field.ts';
import { saidFigure } from '../units/measure.ts';
import type { ReadyRefill } from './reckon-refill.ts';

export interface RangeView {
  readonly title: string;
  readonly drawing: DrawnView;
}

const WIDTHS = { wide: 336, narrow: 318 };

/** Rounded down: nobody counts on a degree that isn't there. */
const shownBoiling = (tempC: number, units: UnitPreference): string =>
  formatFigure(Math.floor(shownTemperature(tempC, units.temperature) + 1e-9), 0);

function siteMarks({ coldestAirC, hottestAirC, city, name }: BenchContext['workshop']): Pick<RangeBarData, 'coldest' | 'hottest'> {
  const site = city || name;
  return {
    coldest: { tempC: coldestAirC, knownBy: 'assumed', note: `coldest air, set for ${site}` },
    hottest: { tempC: hottestAirC, knownBy: 'assumed', note: `hottest air, set for ${site}` },
  };
}

function marks({ recipe, boils, boilsOpen }: ReadyRefill, form: ReadForm, { workshop, units }: BenchContext): RangeBarData {
  const poured = recipe.roundedJugs ?? recipe;
  const freezesC = poured.resultFreezingPointC;
  const isAtLeast = recipe.warnings.some(({ code }) => code === 'at-least');
  const protects = formatFigure(shownProtection(freezesC, { unit: units.temperature }), 0);
  const asked = saidFigure(recipe.targetFreezingPointC, 'temperature', units);
  const boilsC = (boils ?? boilsOpen).boilingPointC;
  const { hottest } = form.figures;
  const thermostat: RangeMark | undefined =
    hottest === undefined
      ? undefined
      : {
          tempC: hottest,
          knownBy: form.states['hottest'] === 'assumed' ? 'assumed' : 'measured',
          note: `hottest coolant, ${saidFigure(boilsC - hottest, 'difference', units)} in hand`,
        };
  return {
    freezes: {
      tempC: freezesC,
      figure: isAtLeast ? `at least ${protects}` : protects,
      knownBy: 'computed',
      note: `freezes, asked for ${asked}`,
    },
    boils: {
      tempC: boilsC,
      figure: shownBoiling(boilsC, units),
      knownBy: boils ? 'computed' : 'assumed',
      note: boils ? `boils, cap ${saidFigure(boils.capGaugeKPa, 'pressure', units)}` : 'boils, cap not known',
    },
    ...(boils
      ? {
          boilsOpen: {
            tempC: boilsOpen.boilingPointC,
            figure: shownBoiling(boilsOpen.boilingPointC, units),
            knownBy: 'computed' as const,
          },
        }
      : {}),
    ...siteMarks(workshop),
    unit: units.temperature,
    ...(thermostat ? { thermostat } : {}),
  };
}

/** @example rangeTitle(answer, METRIC_UNITS) // 'Holds from −27 to 121 °C' */
export function rangeTitle({ recipe, boils, boilsOpen }: ReadyRefill, units: UnitPreference): string {
  const poured = recipe.roundedJugs ?? recipe;
  const freezes = formatFigure(shownProtection(poured.resultFreezingPointC, { unit: units.temperature }), 0);
  return `Holds from ${freezes} to ${shownBoiling((boils ?? boilsOpen).boilingPointC, units)} ${units.temperature}`;
}

/** From freezing to boiling, with the site's coldest and hottest on it. */
export function presentRange(answer: ReadyRefill, form: ReadForm, context: BenchContext): RangeView {
  const data = marks(answer, form, context);
  return {
    title: rangeTitle(answer, context.units),
    drawing: drawn('range', WIDTHS, (options) => rangeBar(data, options)),
  };
}

/** The dashed example while nothing can be told. */
export function exampleRange({ workshop, units }: BenchContext): RangeView {
  const data: RangeBarData = {
    freezes: null,
    boils: null,
    ...siteMarks(workshop),
    unit: units.temperature,
  };
  return { title: 'Holds from … to …', drawing: drawn('range', WIDTHS, (options) => rangeBar(data, options)) };
}
