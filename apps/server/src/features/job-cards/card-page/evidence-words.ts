import type { EvidenceValue, FillAmounts, Step } from '#libs/checklist';
import { formatFigure } from '#libs/units';

/**
 * What was recorded, in as few words as stand under a step.
 *
 * @example evidenceWords(step, { kind: 'litres', litres: 4.6, about: true }) // 'about 4.6 L'
 */
export function evidenceWords(step: Step, value: EvidenceValue): string {
  switch (value.kind) {
    case 'tick':
      return '';
    case 'reading': {
      const unit = step.evidence.kind === 'reading' ? step.evidence.unit : '';
      const doubt = value.expandedU === null ? '' : ` ± ${plain(value.expandedU)}`;
      return about(value.about, `${plain(value.value)} ${unit}${doubt}`);
    }
    case 'cold-reading':
      return coldWords(step, value);
    case 'litres':
      return about(value.about, `${plain(value.litres)} L`);
    case 'choice':
      return choiceWords(step, value);
    case 'list':
      return listWords(step, value);
    case 'count':
      return `${value.counted} of ${value.of}`;
    case 'variant':
      return value.variant;
    case 'torque': {
      const { setAt, unit, tightened, of, inSequence, document, page } = value.entry;
      return `${plain(setAt)} ${unit}, ${tightened} of ${of}${inSequence ? ', in sequence' : ', not in sequence'}; ${document}, page ${page}`;
    }
    case 'fill':
      return about(value.about, amountWords(value.amounts));
    case 'level':
      return levelWords(value);
  }
}

/** 'about' says that it was judged by eye. */
const about = (isAbout: boolean, text: string): string => (isAbout ? `about ${text}` : text);

/** As many decimals as it was given with, at most three. */
export function plain(value: number): string {
  const decimals = [0, 1, 2].find((places) => Math.abs(value - Number(value.toFixed(places))) < 1e-9) ?? 3;
  return formatFigure(value, decimals);
}

function coldWords({ evidence }: Step, { reading, instrument, place }: Extract<EvidenceValue, { kind: 'cold-reading' }>): string {
  const spec = evidence.kind === 'cold-reading' ? evidence : null;
  const by = spec?.instruments.find(({ key }) => key === instrument)?.words ?? instrument;
  const at = spec?.places.find(({ key }) => key === place)?.words ?? place;
  return `${formatFigure(reading.tempC, 1)} ± ${formatFigure(reading.expandedUncertaintyC, 1)} °C, ${by}, ${at}`;
}

function choiceWords({ evidence }: Step, { choice, asked }: Extract<EvidenceValue, { kind: 'choice' }>): string {
  const option = evidence.kind === 'choice' ? evidence.options.find(({ key }) => key === choice) : undefined;
  const asks = (option?.asks ?? []).flatMap(({ key, words, unit }) => {
    const figure = asked[key];
    return figure === undefined ? [] : [`${words.toLowerCase()} ${plain(figure)} ${unit}`];
  });
  return [option?.words ?? choice, ...asks].join(', ');
}

function listWords({ evidence }: Step, { items, leftOff }: Extract<EvidenceValue, { kind: 'list' }>): string {
  if (evidence.kind === 'list' && evidence.returns !== undefined) {
    if (leftOff.length === 0) return 'all of it';
    return `left off: ${leftOff.map(({ item, why }) => `${item} (${why})`).join(', ')}`;
  }
  return items.length === 0 ? 'none' : items.join(', ');
}

function levelWords({ belowMarkMl, amounts }: Extract<EvidenceValue, { kind: 'level' }>): string {
  const took = amounts.productMl + amounts.waterMl + amounts.keptMl > 0 ? `; took ${amountWords(amounts)}` : '';
  if (belowMarkMl === null) return `the tank was empty${took}`;
  if (belowMarkMl === 0) return `at the cold mark${took}`;
  return `${plain(Math.abs(belowMarkMl))} mL ${belowMarkMl > 0 ? 'below' : 'above'} the cold mark${took}`;
}

/** @example amountWords({ productMl: 1050, waterMl: 950, keptMl: 0 }) // '1050 mL product and 950 mL water' */
export function amountWords({ productMl, waterMl, keptMl }: FillAmounts): string {
  const named = [
    [productMl, 'product'],
    [waterMl, 'water'],
    [keptMl, 'kept coolant'],
  ] as const;
  const parts = named.flatMap(([amount, name]) => (amount > 0 ? [`${plain(amount)} mL ${name}`] : []));
  return parts.length === 0 ? 'nothing' : parts.join(' and ');
}
