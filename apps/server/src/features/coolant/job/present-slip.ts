import { type DrawingOptions, jugs as drawJugs } from '#libs/charts';
import { dateTimeText } from '../../../web/dates.ts';
import type { OpenCard } from '../../job-cards/job-cards.service.ts';
import type { BenchContext } from '../bench-context.ts';
import type { BenchField, ReadForm } from '../form/bench-field.ts';
import { glycolOf } from '../form/glycol-field.ts';
import { THE_MANUAL_RULES } from '../grounds-view.ts';
import { jugsOf, jugSize, type Liquid, liquidsToPour } from '../refill/liquids.ts';
import { pouringLines } from '../refill/pouring-lines.ts';
import { presentGrounds } from '../refill/present-grounds.ts';
import { jugsWidthPx } from '../refill/present-pour.ts';
import { rangeTitle } from '../refill/present-range.ts';
import type { ReadyRefill } from '../refill/reckon-refill.ts';
import { refillFigures } from '../refill/refill-figures.ts';
import { inUnits } from '../units/in-units.ts';
import { saidFigure } from '../units/measure.ts';

export interface SlipView {
  readonly title: string;
  readonly workshop: string;
  readonly job: string;
  readonly key: string;
  readonly car: string;
  readonly printed: string;
  readonly range: string;
  readonly pours: readonly string[];
  /** All jugs in the order of pouring. */
  readonly jugs: string;
  readonly order: readonly string[];
  readonly comesTo: readonly string[];
  readonly known: readonly { readonly term: string; readonly said: string }[];
  readonly warnings: readonly string[];
  readonly sure: string;
  readonly assumed: string;
  readonly manual: string;
}

export interface Slip {
  readonly row: OpenCard['row'];
  readonly fields: readonly BenchField[];
  readonly form: ReadForm;
  readonly answer: ReadyRefill;
  readonly context: BenchContext;
  readonly now: Date;
}

const ON_THE_SLIP = ['holds', 'missing', 'out', 'kept', 'staysReading', 'staysPercent', 'staysProduct', 'cap', 'capHeld'];
const MOST_JUGS_IN_A_ROW = 5;
const SHORT: Readonly<Record<Liquid['key'], string>> = { additive: 'product', water: 'water' };

/** What was reckoned with, and whether anybody knows it. */
function known({ fields, form, context }: Slip): SlipView['known'] {
  return fields.flatMap((field) => {
    const figure = form.figures[field.name];
    if (field.kind !== 'figure' || figure === undefined || !ON_THE_SLIP.includes(field.name)) return [];
    const said = saidFigure(figure, field.quantity, context.units);
    return [{ term: field.label, said: form.states[field.name] === 'assumed' ? `${said}, assumed` : said }];
  });
}

/** Half a page for the bay: what to pour in which order, what it comes to, what it rests on. */
export function presentSlip(slip: Slip): SlipView {
  const { row, form, answer, context, now } = slip;
  const { units, workshop } = context;
  const size = jugSize(form, context);
  const liquids = liquidsToPour(answer, size);
  const toPour = liquids.flatMap((liquid) =>
    jugsOf(liquid, size, units).jugs.map((jug) => (units.volume === 'L' ? { ...jug, name: SHORT[liquid.key] } : jug)),
  );
  const widthPx = jugsWidthPx(toPour.length, MOST_JUGS_IN_A_ROW);
  const options: DrawingOptions = { palette: 'print', idPrefix: 'slip', widthPx, ground: 'sheet' };
  const { sure, assumed } = presentGrounds(answer, glycolOf(form), units);
  return {
    title: `Coolant slip, job ${row.number}`,
    workshop: workshop.name,
    job: `Job ${row.number}`,
    key: row.keyTag === null ? '' : String(row.keyTag),
    car: `${row.vehicle.make} ${row.vehicle.model}, ${row.vehicle.registration}`,
    printed: dateTimeText(now, workshop.timeZone),
    range: rangeTitle(answer, units),
    pours: liquids.map(({ totalL, what }) => `${saidFigure(totalL, 'volume', units)} ${what}`),
    jugs: drawJugs({ ...size, jugs: toPour }, options).svg,
    order: pouringLines(answer.recipe, { productName: answer.productName, units, keptL: answer.keptL }),
    comesTo: refillFigures(answer, units).map(({ value, unit, word }) => `${value} ${unit} ${word}`),
    known: known(slip),
    warnings: answer.warnings.map(({ text }) => inUnits(text, units)),
    sure,
    assumed,
    manual: THE_MANUAL_RULES,
  };
}
