import { canDo, type Step } from '#libs/checklist';
import { urls } from '../../../web/urls.ts';
import { fieldPart, idErrors, pageOf } from './card-form.ts';
import type { CardPage, FoldView, PartView } from './card-view.types.ts';

interface FactSpec {
  name: string;
  key: 'capacity' | 'freezing-point';
  summary: string;
  parts: readonly PartView[];
  button: string;
  /** Nobody has stated it yet, and the step needs it. */
  isMissing: boolean;
}

/** Figures of the car that the step needs and nobody has stated: typed in here, each with its source. */
export function missingFacts(page: CardPage, step: Step): FoldView[] {
  return factFolds(page, step).filter(({ isMissing }) => isMissing);
}

/** A capacity that differs stands beside the one that is known. */
export function otherFacts(page: CardPage, step: Step): FoldView[] {
  return factFolds(page, step).filter(({ isMissing }) => !isMissing);
}

function factFolds(page: CardPage, step: Step): (FoldView & { isMissing: boolean })[] {
  const wanted = step.figures ?? [];
  const needsCapacity = wanted.some((name) => name === 'capacity' || name === 'tray' || name === 'drainVolume' || name === 'recipe');
  const { recipe, capacityL, fill } = page.figures;
  const needsStrength = wanted.includes('recipe') && recipe.kind === 'asks' && recipe.missing.includes('strength') && !fill.isOpenedAgain;
  return [
    ...(needsCapacity ? [fold(page, step, capacityForm(page, capacityL === null))] : []),
    ...(needsStrength ? [fold(page, step, strengthForm(page))] : []),
  ];
}

function capacityForm(page: CardPage, isMissing: boolean): FactSpec {
  const name = 'capacity';
  return {
    name,
    key: 'capacity',
    isMissing,
    summary: isMissing ? 'Capacity not known: type it, with its source' : 'Another capacity, with its source',
    parts: [
      fieldPart(page, name, { name: 'figure', label: 'The system holds', unit: 'L', inputmode: 'decimal', required: true, short: true }),
      fieldPart(page, name, {
        name: 'words',
        label: 'Which fill',
        options: [
          { value: 'service refill', label: 'Service refill' },
          { value: 'dry fill', label: 'Dry fill' },
        ],
      }),
      fieldPart(page, name, {
        name: 'source',
        label: 'Source',
        maxlength: 200,
        required: true,
        hint: 'Handbook and page, data sheet, own fill.',
      }),
    ],
    button: 'Keep it with the car',
  };
}

function strengthForm(page: CardPage): FactSpec {
  const name = 'residual';
  return {
    name,
    key: 'freezing-point',
    isMissing: true,
    summary: 'What stays in the block: type its freezing point',
    parts: [
      fieldPart(page, name, {
        name: 'figure',
        label: 'Freezing point, below zero',
        unit: '°C',
        inputmode: 'decimal',
        required: true,
        short: true,
        hint: '18 is taken as −18.',
      }),
      fieldPart(page, name, {
        name: 'source',
        label: 'How it is known',
        maxlength: 200,
        required: true,
        hint: 'Read today with the refractometer; or assumed, and from what.',
      }),
    ],
    button: 'Keep it with the car',
  };
}

function fold(page: CardPage, step: Step, { name, key, summary, parts, button, isMissing }: FactSpec): FoldView & { isMissing: boolean } {
  const errors = idErrors(page, name);
  return {
    summary,
    isMissing,
    // Where it is poured, the figure is wanted now; elsewhere it stands ready behind its words.
    isOpen: (isMissing && step.evidence.kind === 'jugs' && canDo(page.state, step.key).can) || errors.length > 0,
    form: {
      name,
      action: urls.cardFacts(page.row.id),
      page: pageOf(page),
      hidden: [
        { name: 'key', value: key },
        { name: 'step', value: step.key },
      ],
      parts: [...parts],
      takesFiles: false,
      buttons: [{ label: button, look: '' }],
      errors,
    },
  };
}
