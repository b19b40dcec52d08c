import { checkInput } from './check-input.ts';
import { type DataTable, type Drawing, type DrawingOptions } from './drawing.ts';
import {
  checkFillAccount,
  fillSums,
  IN_STAGES,
  OUT_STAGES,
  STAGE_WORDS,
  type FillAccountData,
  type FillAmount,
  type FillStage,
  type FillSums,
} from './fill-account/fill-account-data.ts';
import { inUnit } from './fill-account/in-unit.ts';
import { MORNING_RULE_PX, morningRule } from './fill-account/morning-rule.ts';
import { drawVessel, vesselHeightPx, type Layer } from './fill-account/vessel.ts';
import { VERDICT_WORDS } from './marks/peg.ts';
import { finishDrawing } from './pen/finish-drawing.ts';
import { createPen } from './pen/pen.ts';
import { formatInUnit } from './text/format-in-unit.ts';

/** Shown broken while the system's volume is not known. */
const EXAMPLE_HOLDS_L = 6;
const STACKED_BELOW_PX = 620;
/** Less would be written as nothing. */
const SHOWN_L = 0.005;

type Say = (volume: number) => string;

const sayIn =
  ({ unit = 'L' }: FillAccountData): Say =>
  (volume) =>
    formatInUnit(volume, unit);

const amountText = (amount: FillAmount, say: Say): string => `${amount.isAbout === true ? 'about ' : ''}${say(amount.volumeL)}`;

const outLayers = (data: FillAccountData, holdsL: number, { staysL }: FillSums): Layer[] => {
  const say = sayIn(data);
  const known = OUT_STAGES.reduce<{ layers: Layer[]; atL: number }>(
    ({ layers, atL }, stage) => {
      const amount = data[stage];
      if (amount === null) return { layers, atL };
      const layer: Layer = {
        fromL: atL - amount.volumeL,
        toL: atL,
        figure: amountText(amount, say),
        note: STAGE_WORDS[stage],
        hatch: stage === 'missingOnArrival' ? null : stage === 'drainedWaste' ? 'waste' : 'mixed',
        isBroken: stage === 'missingOnArrival' || amount.isAbout === true,
      };
      return { layers: [...layers, layer], atL: atL - amount.volumeL };
    },
    { layers: [], atL: holdsL },
  );
  const stays: Layer = {
    fromL: 0,
    toL: staysL,
    figure: say(staysL),
    note: 'stays in the block, computed',
    hatch: 'mixed',
    isBroken: data.holdsKnownBy === 'assumed',
  };
  return [...known.layers, stays];
};

const differenceLayer = (data: FillAccountData, { staysL, inL, shrinkL, differenceL }: FillSums, holdsL: number): Layer | null => {
  if (data.firstFill === null) return null;
  const say = sayIn(data);
  const word = Math.abs(differenceL) < 0.0005 ? 'on the mark' : `${say(Math.abs(differenceL))} ${differenceL < 0 ? 'short' : 'over'}`;
  const verdict = data.verdict === undefined ? '' : `, ${VERDICT_WORDS[data.verdict]}`;
  return {
    fromL: staysL + inL - shrinkL,
    toL: holdsL,
    figure: word,
    note: `tolerance ± ${say(data.toleranceL)}${verdict}`,
    hatch: null,
    isBroken: true,
    ...(data.verdict === undefined ? {} : { verdict: data.verdict }),
  };
};

const inLayers = (data: FillAccountData, holdsL: number, sums: FillSums): Layer[] => {
  const say = sayIn(data);
  const stays: Layer = {
    fromL: 0,
    toL: sums.staysL,
    figure: say(sums.staysL),
    note: 'from the block',
    hatch: 'mixed',
    isBroken: data.holdsKnownBy === 'assumed',
  };
  const filled = IN_STAGES.reduce<{ layers: Layer[]; atL: number }>(
    ({ layers, atL }, stage) => {
      const amount = data[stage];
      const shrinkL = stage === 'firstFill' ? sums.shrinkL : 0;
      const toL = atL + (amount?.volumeL ?? 0) - shrinkL;
      const layer: Layer = {
        fromL: atL,
        toL,
        figure: amount === null ? 'not yet' : amountText(amount, say),
        note: shrinkL < SHOWN_L ? STAGE_WORDS[stage] : `${STAGE_WORDS[stage]}, ${say(shrinkL)} shrink on mixing`,
        hatch: amount === null ? null : 'concentrate',
        isBroken: amount === null || amount.isAbout === true,
      };
      return { layers: [...layers, layer], atL: toL };
    },
    { layers: [stays], atL: sums.staysL },
  );
  const difference = differenceLayer(data, sums, holdsL);
  return difference === null ? filled.layers : [...filled.layers, difference];
};

const exampleLayers = (holdsL: number, notes: readonly string[]): Layer[] =>
  notes.map((note, index) => ({
    fromL: (holdsL * index) / notes.length,
    toL: (holdsL * (index + 1)) / notes.length,
    figure: '?',
    note,
    hatch: null,
    isBroken: true,
  }));

const tableOf = (data: FillAccountData, sums: FillSums | null): DataTable => {
  const say = sayIn(data);
  const row = (stage: FillStage, sign: string): string[] => {
    const amount = data[stage];
    return [STAGE_WORDS[stage], amount === null ? 'not read' : `${sign}${amountText(amount, say)}`];
  };
  const computed =
    sums === null
      ? []
      : [
          ['stays in the block', say(sums.staysL)],
          ...(sums.shrinkL < SHOWN_L ? [] : [['shrink on mixing', `−${say(sums.shrinkL)}`]]),
          ['filled less what was out', say(sums.differenceL)],
        ];
  return {
    caption: 'Fill account',
    head: ['what', 'volume'],
    rows: [
      ['system holds', data.holdsL === null ? 'not known' : say(data.holdsL)],
      ...OUT_STAGES.map((stage) => row(stage, '−')),
      ...IN_STAGES.map((stage) => row(stage, '+')),
      ...computed,
      ['tolerance', `± ${say(data.toleranceL)}`],
      ['limit next morning', say(data.morningLimitL)],
    ],
  };
};

/**
 * Draws the fill account: one vessel for what was missing or drained, one for what was filled in stages, both to the scale of the
 * system with its cold mark as a chain line and the tolerance as a bracket; and on a rule of its own what was taken next morning
 * against its limit. Verdicts are given, not decided here. Without the system's volume a dashed example is drawn.
 *
 * @throws ChartInputError when a volume is below zero or no car's.
 */
export function fillAccount(account: FillAccountData, options: DrawingOptions): Drawing {
  checkInput(account, options);
  checkFillAccount(account);
  const data = inUnit(account);
  const say = sayIn(data);
  const pen = createPen(options);
  const holdsL = data.holdsL ?? EXAMPLE_HOLDS_L;
  const sums = data.holdsL === null ? null : fillSums(data, holdsL);
  const out =
    sums === null ? exampleLayers(holdsL, ['stays in the block', 'drained', 'missing on arrival']) : outLayers(data, holdsL, sums);
  const into = sums === null ? exampleLayers(holdsL, ['from the block', 'filled, stage by stage']) : inLayers(data, holdsL, sums);
  const isStacked = options.widthPx < STACKED_BELOW_PX;
  const half = isStacked ? options.widthPx : options.widthPx / 2;
  const heights = [out, into].map((layers) => vesselHeightPx(layers, half));
  const [outPx = 0, intoPx = 0] = heights;
  const shared = {
    holdsL,
    highL: Math.max(holdsL + data.toleranceL, (sums?.staysL ?? 0) + (sums?.inL ?? 0), sums?.outL ?? 0) * 1.04,
    unit: data.unit ?? 'L',
    widthPx: half,
    isExample: sums === null,
  };
  const intoAt = isStacked ? { x: 0, y: outPx + 18 } : { x: half, y: 0 };
  const ruleY = (isStacked ? outPx + 18 + intoPx : Math.max(outPx, intoPx)) + 22;
  const body =
    pen.patterns(['mixed', 'concentrate', 'waste', 'late']) +
    drawVessel(pen, { ...shared, name: 'Out', layers: out, toleranceL: null, x: 0, y: 0 }) +
    drawVessel(pen, { ...shared, name: 'In', layers: into, toleranceL: data.toleranceL, ...intoAt }) +
    morningRule(pen, data, { x: 0, y: ruleY, widthPx: options.widthPx });
  const table = tableOf(data, sums);
  return finishDrawing(
    {
      title:
        sums === null
          ? 'Fill account: the system is not known yet, an example is drawn dashed'
          : `Fill account: ${say(sums.outL)} out, ${say(sums.inL)} in`,
      description: table.rows.map((row) => row.join(' ')).join('; '),
      table,
      heightPx: ruleY + MORNING_RULE_PX,
      body,
    },
    options,
  );
}
