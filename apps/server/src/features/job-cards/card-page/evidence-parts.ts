import { type Evidence, type Step } from '#libs/checklist';
import { askField } from '../card-form/evidence-from-form.ts';
import { MOST_LINES } from '../card-form/list-from-form.ts';
import { fieldPart, platesView, tickPart } from './card-form.ts';
import type { CardPage, PartView } from './card-view.types.ts';
import { WORK } from './reading-form.ts';

/** The fields of a step's own work, beside its large figure. */
export function evidenceParts(page: CardPage, { evidence }: Step): PartView[] {
  switch (evidence.kind) {
    case 'choice':
      return choiceParts(page, evidence);
    case 'list':
      return evidence.returns === undefined ? [linesPart(page)] : returnedParts(page, evidence.returns);
    case 'count':
      return countParts(page, evidence.what);
    case 'torque':
      return torqueParts(page);
    case 'jugs':
      return amountParts(page);
    case 'level':
      return evidence.fill === undefined ? [] : [{ words: 'What it took to bring it up:' }, ...amountParts(page)];
    case 'tick':
    case 'reading':
    case 'cold-reading':
    case 'litres':
    case 'variant':
    case 'timer':
      return [];
  }
}

function choiceParts(page: CardPage, { options }: Extract<Evidence, { kind: 'choice' }>): PartView[] {
  const plates = platesView(page, WORK, {
    legend: 'Answer',
    name: 'choice',
    required: true,
    oneColumn: options.length > 4,
    options: options.map(({ key, words }) => ({ value: key, label: words })),
  });
  const asked = options.flatMap((option) =>
    (option.asks ?? []).map((ask) =>
      fieldPart(page, WORK, {
        name: askField(option.key, ask.key),
        label: `${ask.words}, if “${option.words}”`,
        unit: ask.unit,
        inputmode: 'decimal',
        short: true,
        optional: true,
      }),
    ),
  );
  return [{ plates }, ...asked];
}

function linesPart(page: CardPage): PartView {
  return fieldPart(page, WORK, { name: 'items', label: 'One to a line', lines: 5, maxlength: 2000 });
}

/** The list of what came off is in view: a tick says that one of it stays off, with the reason beside it. */
function returnedParts(page: CardPage, step: string): PartView[] {
  const value = page.state.steps[step]?.value;
  const items = value?.kind === 'list' ? value.items.slice(0, MOST_LINES) : [];
  if (items.length === 0) return [{ words: 'Nothing was named as taken off.' }];
  return [
    { words: `Taken off: ${items.join(', ')}. Tick only what stays off.` },
    ...items.flatMap((item, index) => [
      {
        plates: platesView(page, WORK, {
          legend: item,
          name: `left-${index}`,
          many: true,
          oneColumn: true,
          options: [{ value: item, label: `${item} stays off` }],
        }),
      },
      fieldPart(page, WORK, { name: `why-${index}`, label: `Why, if ${item} stays off`, maxlength: 300, optional: true }),
    ]),
  ];
}

function countParts(page: CardPage, what: string): PartView[] {
  const number = { inputmode: 'numeric', required: true, short: true } as const;
  return [
    fieldPart(page, WORK, { name: 'of', label: `How many ${what} went out`, ...number }),
    fieldPart(page, WORK, { name: 'counted', label: 'How many are back', ...number }),
  ];
}

/** Every figure is typed from the manual: none is offered. */
function torqueParts(page: CardPage): PartView[] {
  const field = (spec: Parameters<typeof fieldPart>[2]): PartView => fieldPart(page, WORK, spec);
  const units = ['Nm', 'lbf·ft', 'lbf·in'].map((unit) => ({ value: unit, label: unit }));
  return [
    field({ name: 'setAt', label: 'Set at, as the manual prints it', inputmode: 'decimal', required: true }),
    { plates: platesView(page, WORK, { legend: 'Unit as printed', name: 'unit', bare: true, required: true, options: units }) },
    field({ name: 'document', label: 'Document', maxlength: 200, required: true }),
    field({ name: 'page', label: 'Page', maxlength: 40, required: true }),
    field({ name: 'tightened', label: 'Tightened', inputmode: 'numeric', required: true }),
    field({ name: 'of', label: 'Of how many', inputmode: 'numeric', required: true }),
    field({ name: 'thread', label: 'Thread, to check the entry', maxlength: 10, placeholder: 'M6', optional: true }),
    field({ name: 'then', label: 'Then, stages or angle', maxlength: 100, placeholder: 'then 90°', optional: true }),
    tickPart(page, WORK, { name: 'inSequence', legend: 'Sequence', label: 'In the manual’s sequence' }),
  ];
}

function amountParts(page: CardPage): PartView[] {
  const ml = { unit: 'mL', inputmode: 'decimal', optional: true } as const;
  return [
    fieldPart(page, WORK, { name: 'productMl', label: 'Product', ...ml }),
    fieldPart(page, WORK, { name: 'waterMl', label: 'Demineralised water', ...ml }),
    fieldPart(page, WORK, { name: 'keptMl', label: 'Kept coolant', ...ml }),
  ];
}
