import {
  type BleedDevice,
  thermostatPlan,
  thermostatScale,
  thermostatSection,
  type FeatureMarks,
  type SealType,
  type ThermostatFeatures,
} from '#libs/charts';
import type { ComparisonAnswer, FamilyFeature, FeatureFinding, PartFamily, RankedCandidate } from '#libs/fitment';
import type { FormState } from '../../platform/pages/form-state.ts';
import { timeText } from '../../web/dates.ts';
import { moneyText } from '../../web/money-text.ts';
import { urls } from '../../web/urls.ts';
import { type ReadingForm, readingForm } from './reading-form.presenter.ts';
import type { BenchCandidate, BenchReading } from './bench.repository.ts';
import type { Bench } from './bench.service.ts';

const DRAWING_PX = 216;

export interface BenchView {
  title: string;
  head: { title: string; lead: string; rest: string; keyTag: { key: string; href: string } | undefined };
  hasCandidates: boolean;
  ordersHref: string;
  columns: {
    letter: string;
    partNumber: string;
    about: string;
    chance: string;
    barPercent: number;
    isRuledOut: boolean;
    unit: string;
    warning: string;
  }[];
  sections: string[];
  plans: string[];
  rows: {
    name: string;
    about: string;
    read: string;
    readBy: string;
    takeBack: string | undefined;
    readHref: string;
    cells: { verdict: string; word: string }[];
  }[];
  none: string;
  next: { name: string; instruction: string; bits: string; minutes: string } | undefined;
  reading: ReadingForm | undefined;
  choose:
    | {
        action: string;
        options: { id: string; value: string; label: string; note: string; checked: boolean; disabled: boolean }[];
        isSettled: boolean;
      }
    | undefined;
  chosen: string | undefined;
  cautions: readonly string[];
  errors: FormState['summary'];
}

export interface BenchOptions {
  readForm: FormState;
  unreadForm: FormState;
  chooseForm: FormState;
  reading: string | undefined;
  timeZone: string;
  currency: string;
  names: ReadonlyMap<string, string>;
}

const PEGS = { conforms: 'fits', 'does-not-conform': 'does-not-fit', 'not-proven': 'inconclusive' } as const;
const letterOf = (index: number): string => String.fromCharCode(65 + (index % 26));
const percent = (probability: number): string => (probability > 0 && probability < 0.01 ? '< 1 %' : `${Math.round(probability * 100)} %`);

function valueWords(feature: FamilyFeature, value: number | string | undefined | null): string {
  if (value === undefined || value === null || value === '') return 'not stated';
  if (feature.kind === 'category') return feature.values.find(({ key }) => key === value)?.name ?? String(value);
  return typeof value === 'number' ? `${value.toFixed(feature.unit === '°C' ? 0 : 1)}` : String(value);
}

const BLEEDS: Readonly<Record<string, BleedDevice>> = { none: 'none', hole: 'plain-hole', 'jiggle-pin': 'jiggle-pin' };

function drawn(values: Readonly<Record<string, number | string>>): ThermostatFeatures {
  const figure = (key: string): number | null => (typeof values[key] === 'number' ? values[key] : null);
  const bypass = values['bypassValve'];
  return {
    flangeDiameterMm: figure('flangeDiameterMm'),
    valveDiameterMm: figure('valveDiameterMm'),
    heightMm: figure('overallHeightMm'),
    sealType: (values['seal'] as SealType | undefined) ?? null,
    bleedDevice: BLEEDS[String(values['bleedDevice'])] ?? null,
    hasBypassValve: bypass === undefined ? null : bypass !== 'none',
  };
}

const DRAWN_KEYS: Readonly<Record<string, keyof ThermostatFeatures>> = {
  flangeDiameterMm: 'flangeDiameterMm',
  overallHeightMm: 'heightMm',
  seal: 'sealType',
  bleedDevice: 'bleedDevice',
  valveDiameterMm: 'valveDiameterMm',
  bypassValve: 'hasBypassValve',
};

/** On the drawings only what speaks against a candidate, and what is to be read next, is pointed out. */
function marksOf(findings: readonly FeatureFinding[], nextKey: string | undefined): FeatureMarks {
  const marks: Partial<Record<keyof ThermostatFeatures, 'does-not' | 'next'>> = {};
  for (const { key, verdict } of findings) {
    const drawnKey = DRAWN_KEYS[key];
    if (drawnKey && verdict === 'does-not-conform') marks[drawnKey] = 'does-not';
    else if (drawnKey && key === nextKey) marks[drawnKey] = 'next';
  }
  return marks;
}

function removedPart(readings: readonly BenchReading[]): Record<string, number | string> {
  return Object.fromEntries(
    readings.flatMap(({ feature, figure, words, couldNotRead, place }) =>
      couldNotRead || place === 'recess' ? [] : [[feature, figure ?? words ?? '']],
    ),
  );
}

function leadOf({ answer, job, candidates }: Bench): { lead: string; rest: string } {
  const rest = 'Nothing is fitted before the hold point “variant settled” is passed.';
  if (job.choice) return { lead: 'The variant is settled.', rest: '' };
  if (!answer)
    return {
      lead: 'No candidate lies here and none is listed for this engine.',
      rest: job.engineCode === '' ? 'The vehicle’s engine code is missing: it narrows the list for nothing.' : rest,
    };
  const open = answer.ranking.filter(({ verdict }) => verdict !== 'excluded');
  if (open.length === 0)
    return { lead: 'None of these fits what was read.', rest: 'Measure the recess in the engine, or order another variant.' };
  if (answer.settled)
    return {
      lead: `What was read settles it: ${candidates.find(({ id }) => id === open[0]?.id)?.partNumber ?? ''}.`,
      rest: 'Confirm it below.',
    };
  if (open.length === 1) return { lead: 'One variant still fits what has been read.', rest };
  return { lead: `${open.length} variants still fit what has been read.`, rest };
}

function readingWords(feature: FamilyFeature, readings: readonly BenchReading[]): { text: string; last: BenchReading | undefined } {
  const last = readings.filter((reading) => reading.feature === feature.key).at(-1);
  if (!last) return { text: 'not read', last };
  if (last.couldNotRead) return { text: 'could not be read', last };
  const doubt = last.expandedU === null || last.expandedU === 0 ? '' : ` ± ${last.expandedU}`;
  return { text: `${last.figure === null ? valueWords(feature, last.words) : last.figure}${doubt}`, last };
}

function cell(feature: FamilyFeature, candidate: BenchCandidate, finding: FeatureFinding | undefined): { verdict: string; word: string } {
  const word = valueWords(feature, candidate.values[feature.key]);
  const verdict = finding === undefined || finding.note !== undefined ? 'not-read' : PEGS[finding.verdict];
  return { verdict, word };
}

function chooseView(
  bench: Bench,
  ordered: readonly (RankedCandidate & { candidate: BenchCandidate })[],
  form: FormState,
): BenchView['choose'] {
  if (bench.job.choice || !bench.answer) return undefined;
  const [leader] = ordered;
  return {
    action: urls.chooseVariant(bench.job.id),
    isSettled: bench.answer.settled,
    options: ordered.map(({ id, candidate, verdict, probability }) => ({
      id: `variant-${id}`,
      value: id,
      label: candidate.partNumber,
      note: verdict === 'excluded' ? 'does not seal' : percent(probability),
      checked: (form.values['variantId'] ?? (bench.answer?.settled ? leader?.id : undefined)) === id,
      disabled: verdict === 'excluded',
    })),
  };
}

const critical = (feature: FamilyFeature): string =>
  feature.kind === 'number' && feature.unit !== 'count' ? `${feature.criticality}, ${feature.unit}` : feature.criticality;

export function presentBench(bench: Bench, options: BenchOptions): BenchView {
  const { job, family, candidates, readings, answer } = bench;
  const ordered = (answer?.ranking ?? []).flatMap((ranked) => {
    const candidate = candidates.find(({ id }) => id === ranked.id);
    return candidate ? [{ ...ranked, candidate }] : [];
  });
  const isStated = ({ key }: FamilyFeature): boolean =>
    candidates.some(({ values }) => values[key] !== undefined) || readings.some(({ feature }) => feature === key);
  const features = family.features.filter(isStated);
  const nextKey = answer?.nextReading?.key;
  const removed = removedPart(readings);
  const shapes = [removed, ...ordered.map(({ candidate }) => candidate.values)].map(drawn);
  const scale = thermostatScale(shapes, DRAWING_PX);
  const names = ['Removed part', ...ordered.map(({ candidate }) => candidate.partNumber)];
  const marks = [{}, ...ordered.map(({ features: findings }) => marksOf(findings, nextKey))];
  const draw = (kind: 'section' | 'plan'): string[] =>
    shapes.map((shape, index) => {
      const data = { name: names[index] ?? '', features: shape, marks: marks[index] ?? {}, scale, hasCaution: false };
      const drawing = { palette: 'page', idPrefix: `${kind}-${index}`, widthPx: DRAWING_PX, ground: 'sheet' } as const;
      return (kind === 'section' ? thermostatSection(data, drawing) : thermostatPlan(data, drawing)).svg;
    });
  const wanted = options.reading ?? nextKey ?? features.find(({ key }) => !readings.some(({ feature }) => feature === key))?.key;
  const isOpen = job.choice === undefined && candidates.length > 0;
  return {
    title: `Parts bench, job ${job.number}`,
    head: {
      title: 'Parts bench',
      ...leadOf(bench),
      keyTag: job.keyTag === null ? undefined : { key: String(job.keyTag), href: urls.card(job.id) },
    },
    hasCandidates: candidates.length > 0,
    ordersHref: urls.orderForJob(job.id),
    columns: ordered.map(({ candidate, probability, verdict }, index) => ({
      letter: letterOf(index),
      partNumber: candidate.partNumber,
      about: `${candidate.supplier}, ${moneyText(candidate.priceNet, options.currency)}`,
      chance: percent(probability),
      barPercent: Math.round(probability * 100),
      isRuledOut: verdict === 'excluded',
      unit: candidate.unit ? `piece ${candidate.unit.code}` : 'not ordered',
      warning: candidate.unopenedOnly ? 'Goes back unopened only: compare through the list first.' : '',
    })),
    sections: draw('section'),
    plans: draw('plan'),
    rows: features.map((feature) => rowOf(feature, { bench, ordered, options, isOpen })),
    none: answer ? percent(answer.noneProbability) : '',
    next: isOpen && answer ? nextOf(answer, family) : undefined,
    reading: isOpen
      ? readingForm(
          family.features.find(({ key }) => key === wanted),
          { jobId: job.id, form: options.readForm, unread: options.unreadForm },
        )
      : undefined,
    choose: isOpen ? chooseView(bench, ordered, options.chooseForm) : undefined,
    chosen: job.choice ? candidates.find(({ id }) => id === job.choice?.variantId)?.partNumber : undefined,
    cautions: family.cautions,
    errors: [...options.readForm.summary, ...options.unreadForm.summary, ...options.chooseForm.summary],
  };
}

function rowOf(
  feature: FamilyFeature,
  {
    bench,
    ordered,
    options,
    isOpen,
  }: { bench: Bench; ordered: readonly (RankedCandidate & { candidate: BenchCandidate })[]; options: BenchOptions; isOpen: boolean },
): BenchView['rows'][number] {
  const { text, last } = readingWords(feature, bench.readings);
  const by = last
    ? `${last.instrument === '' ? last.why : last.instrument}, ${options.names.get(last.readById) ?? ''} ${timeText(last.readAt, options.timeZone)}`
    : '';
  return {
    name: feature.name,
    about: critical(feature),
    read: text,
    readBy: by,
    takeBack: last && isOpen ? urls.takeReadingBack(bench.job.id, last.id) : undefined,
    readHref: `${urls.jobParts(bench.job.id)}?read=${feature.key}#read`,
    cells: ordered.map(({ candidate, features }) =>
      cell(
        feature,
        candidate,
        features.find(({ key }) => key === feature.key),
      ),
    ),
  };
}

function nextOf({ nextReading }: ComparisonAnswer, family: PartFamily): BenchView['next'] {
  const feature = family.features.find(({ key }) => key === nextReading?.key);
  if (!nextReading || !feature) return undefined;
  return {
    name: feature.name,
    instruction: feature.howToMeasure,
    bits: nextReading.expectedInformationBits.toFixed(2),
    minutes: nextReading.minutes === 1 ? '1 minute' : `${nextReading.minutes} minutes`,
  };
}
