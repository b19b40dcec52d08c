import { type Flush, flush, type Recipe, type RecipeAfterFlush, recipeAfterFlush, type StrengthInput } from '#libs/coolant';
import { formatFigure, type UnitPreference } from '#libs/units';
import type { BenchContext } from '../bench-context.ts';
import type { BenchField, ReadForm } from '../form/bench-field.ts';
import { type FieldGroup, plainGroup } from '../form/field-group.ts';
import { glycolField, glycolOf } from '../form/glycol-field.ts';
import { additiveOf } from '../refill/additive-of.ts';
import { fieldOfProblem } from '../refill/field-of-problem.ts';
import { pouringLines } from '../refill/pouring-lines.ts';
import { productFields } from '../refill/product-fields.ts';
import { NOTHING_KNOWN } from '../refill/known.ts';
import { aimFields } from '../refill/strength-fields.ts';
import { targetOf } from '../refill/target-of.ts';
import { resultFigure, type ResultFigure } from '../result-figure.ts';
import { saidFigure } from '../units/measure.ts';
import { asks, outcomeOf, type Tool, type ToolAnswer, type ToolOutcome } from './tool.ts';

const VOLUME = { kind: 'figure', quantity: 'volume', most: 500 } as const;
const MANY = { kind: 'figure', quantity: 'count', least: 0, most: 100, holds: 'Flushing is done' } as const;

function ownFields(): readonly BenchField[] {
  return [
    glycolField(),
    { ...VOLUME, name: 'holds', label: 'System holds', least: 0.1, holds: 'A system holds' },
    { ...VOLUME, name: 'out', label: 'Comes out each time', least: 0.01, holds: 'What comes out lies between' },
    {
      kind: 'choice',
      name: 'until',
      label: 'Flush',
      options: [
        { value: 'share', label: 'Until little is left' },
        { value: 'cycles', label: 'So many times' },
      ],
      standing: { value: 'share', how: 'known', said: '' },
    },
    {
      kind: 'figure',
      quantity: 'percent',
      name: 'left',
      label: 'Old coolant left, at most',
      least: 0.1,
      most: 100,
      holds: 'What may be left lies between',
      standing: { value: 5, how: 'assumed', said: 'Common practice, no source.' },
      when: 'when-until-share',
    },
    { ...MANY, name: 'cycles', label: 'Times', when: 'when-until-cycles' },
    {
      kind: 'figure',
      quantity: 'percent',
      name: 'present',
      label: 'Glycol before the flush',
      least: 0,
      most: 60,
      holds: 'A share lies between',
      isOptional: true,
      hint: '% by volume. Empty: what stays is counted as plain water.',
    },
  ];
}

function groups(context: BenchContext): readonly FieldGroup[] {
  return [
    ...plainGroup(ownFields()),
    { title: 'What is poured in', isFolded: false, fields: productFields(context, NOTHING_KNOWN) },
    { title: 'What it shall stand', isFolded: false, fields: aimFields(context) },
  ];
}

function flushFigures(flushed: Flush, units: UnitPreference): readonly ResultFigure[] {
  return [
    resultFigure(flushed.cycles, 'count', { units, word: 'times', said: 'run hot, heater on, drained cold' }),
    resultFigure(flushed.remainingFraction * 100, 'percent', { units, word: 'of the old coolant left' }),
    resultFigure(flushed.leftInBlockL, 'volume', { units, word: 'stays in the block', said: 'almost all of it water' }),
  ];
}

interface Facts {
  flushed: Flush;
  productName: string;
  units: UnitPreference;
}

function filledAnswer(filled: RecipeAfterFlush, { flushed, productName, units }: Facts): ToolAnswer {
  const poured: Recipe['roundedJugs'] | Recipe = filled.roundedJugs ?? filled;
  const said = (volumeL: number): string => saidFigure(volumeL, 'volume', units);
  return {
    headline: `Flush ${flushed.cycles} times, then pour ${said(poured.additiveL)} of ${productName} and ${said(poured.waterL)} of demineralised water.`,
    figures: [
      ...flushFigures(flushed, units),
      resultFigure(poured.resultVolumePercent, 'percent', { units, word: 'of pure glycol', said: 'by volume, after the run' }),
      ...(poured.resultProductPercent === null
        ? []
        : [resultFigure(poured.resultProductPercent, 'percent', { units, word: 'of product' })]),
      resultFigure(poured.resultFreezingPointC, 'temperature', { units, word: 'freezes at', said: 'by the rounded jugs' }),
    ],
    lines: [
      `The water left in the block holds ${formatFigure(filled.leftInBlockVolumePercent, 1)} % of glycol by volume; it dilutes the filling, so more product goes in than the bottle’s table says.`,
      ...pouringLines(filled, { productName, units }),
    ],
    sure: 'The share left is plain dilution: it holds if every cycle mixes completely. The filling is reckoned by mass.',
    assumptions: filled.assumptions,
    warnings: [...flushed.warnings, ...filled.warnings],
    sources: filled.sources,
  };
}

function fill(form: ReadForm, context: BenchContext, flushed: Flush): ToolOutcome {
  const chosen = additiveOf(form, context.products);
  if (!chosen.ok)
    return chosen.message === undefined ? asks(chosen.field) : { kind: 'refused', field: chosen.field, message: chosen.message };
  const target = targetOf(form);
  if (!target.ok) return asks(target.field);
  const { holds = 0, out = 0, present } = form.figures;
  const before: StrengthInput | undefined = present === undefined ? undefined : { volumePercent: present };
  const { additive, limits, name } = chosen.value;
  const filled = recipeAfterFlush({
    glycol: glycolOf(form),
    systemVolumeL: holds,
    drainedVolumeL: out,
    cycles: flushed.cycles,
    present: before,
    additive,
    target: target.value,
    jugL: context.workshop.jugMl / 1000,
    markMl: context.workshop.jugMarkMl,
    limits,
  });
  if (!filled.ok) {
    const { problem } = filled;
    const field = problem.field === 'present.volumePercent' ? 'present' : fieldOfProblem(problem);
    return { kind: 'refused', field, message: problem.message };
  }
  return { kind: 'ready', answer: filledAnswer(filled, { flushed, productName: name, units: context.units }) };
}

/** How often to flush, and the filling after it: the water left in the block counts. */
export const FLUSH: Tool = {
  key: 'flush',
  title: 'Flush',
  lead: 'How often, and what to pour afterwards.',
  rest: 'Drain and fill with water, each time run hot with the heater on; the water left in the block dilutes the last filling.',
  groups,
  cautions: ['opening', 'handling', 'spill', 'waste', 'running'],
  reckon: (form, context) => {
    const { holds, out, left = 5, cycles } = form.figures;
    if (holds === undefined) return asks('holds');
    if (out === undefined) return asks('out');
    const isCounted = form.choices['until'] === 'cycles';
    if (isCounted && cycles === undefined) return asks('cycles');
    const flushed = flush({
      systemVolumeL: holds,
      drainedVolumeL: out,
      ...(isCounted ? { cycles } : { maxRemainingFraction: left / 100 }),
    });
    const fields = { systemVolumeL: 'holds', drainedVolumeL: 'out', cycles: 'cycles', maxRemainingFraction: 'left' };
    if (!flushed.ok || flushed.cycles >= 1) return flushed.ok ? fill(form, context, flushed) : outcomeOf(flushed, fields, noAnswer);
    return {
      kind: 'ready',
      answer: {
        headline: 'No flush is needed for that.',
        figures: flushFigures(flushed, context.units),
        lines: [],
        sure: 'Plain dilution.',
        assumptions: flushed.assumptions,
        warnings: flushed.warnings,
        sources: flushed.sources,
      },
    };
  },
};

function noAnswer(): never {
  throw new Error('A refused flush has no answer');
}
