import { checkMarkupRule } from '#libs/money';
import { type FieldError } from '../outcome.ts';
import { checkFigure, type FigureRule } from '../totals/check-figure.ts';
import { checkTax } from '../totals/check-tax.ts';
import { type CoolantFact, type JobWork } from './job-work.ts';

type Listed = 'labour' | 'parts' | 'coolant' | 'consumables' | 'waste';

const listNames: Readonly<Record<Listed, string>> = {
  labour: 'Labour',
  parts: 'Part',
  coolant: 'Coolant',
  consumables: 'Small materials',
  waste: 'Waste charge',
};

/** What is wrong with the facts of a job so that no draft can be made of them. */
export function checkJobWork(work: JobWork): FieldError[] {
  const lists = (Object.keys(listNames) as Listed[]).flatMap((list) => checkPackages(work, list));
  return [
    ...amount('ceiling', work.ceiling, 'The most the customer agreed to'),
    ...work.packages.flatMap((item, index) => amount(`packages[${index}].ceiling`, item.ceiling, `"${item.name}": the most agreed to`)),
    ...lists,
    ...figuresOf(work).flatMap(([field, value, rule]) => checkFigure(field, value, rule)),
    ...work.parts.flatMap((part, index) =>
      part.price.kind === 'set'
        ? []
        : checkMarkupRule(part.price.rule).map((problem) => ({
            field: `parts[${index}].price.rule`,
            message: `"${part.name}": ${problem}`,
          })),
    ),
    ...taxesOf(work),
    ...work.coolant.flatMap(checkPours),
  ];
}

function amount(field: string, value: string | null, what: string): FieldError[] {
  return value === null ? [] : checkFigure(field, value, { what, places: 2, sign: 'zero-or-more' });
}

function checkPackages(work: JobWork, list: Listed): FieldError[] {
  const known = new Set(work.packages.map((item) => item.id));
  return work[list].flatMap((fact, index) =>
    known.has(fact.packageId)
      ? []
      : [
          {
            field: `${list}[${index}].packageId`,
            message: `${listNames[list]} ${index + 1} belongs to no package of the estimate. Add it to one, so that the customer can say yes to it.`,
          },
        ],
  );
}

type Figure = readonly [field: string, value: string, rule: FigureRule];

function figuresOf(work: JobWork): Figure[] {
  const price = (field: string, value: string, name: string): Figure => [
    field,
    value,
    { what: `"${name}": the price`, sign: 'zero-or-more' },
  ];
  const quantity = (field: string, value: string, name: string): Figure => [
    field,
    value,
    { what: `"${name}": the quantity`, sign: 'zero-or-more' },
  ];
  return [
    ...work.labour.flatMap(({ words, charge }, index) => {
      const path = `labour[${index}].charge`;
      if (charge.kind === 'menu') return [price(`${path}.price`, charge.price, words)];
      return [quantity(`${path}.hours`, charge.hours, words), price(`${path}.ratePerHour`, charge.ratePerHour, words)];
    }),
    ...work.parts.flatMap((part, index) => [
      quantity(`parts[${index}].quantity`, part.quantity, part.name),
      part.price.kind === 'set'
        ? price(`parts[${index}].price.unitPrice`, part.price.unitPrice, part.name)
        : price(`parts[${index}].price.unitCost`, part.price.unitCost, part.name),
    ]),
    ...work.consumables.flatMap(({ words, charge }, index) => {
      const path = `consumables[${index}].charge`;
      if (charge.kind === 'item')
        return [quantity(`${path}.quantity`, charge.quantity, words), price(`${path}.unitPrice`, charge.unitPrice, words)];
      return [
        quantity(`${path}.percent`, charge.percent, words),
        ...(charge.maximum === undefined ? [] : [price(`${path}.maximum`, charge.maximum, words)]),
      ];
    }),
    ...work.waste.flatMap(({ words, charge }, index) => {
      const path = `waste[${index}].charge`;
      if (charge.kind === 'fixed') return [price(`${path}.price`, charge.price, words)];
      return [quantity(`${path}.volumeL`, charge.volumeL, words), price(`${path}.pricePerL`, charge.pricePerL, words)];
    }),
  ];
}

function taxesOf(work: JobWork): FieldError[] {
  return [
    ...work.labour.flatMap((fact, index) => checkTax(`labour[${index}]`, fact, { what: `"${fact.words}"` })),
    ...work.parts.flatMap((fact, index) => checkTax(`parts[${index}]`, fact, { what: `"${fact.name}"` })),
    ...work.consumables.flatMap((fact, index) => checkTax(`consumables[${index}]`, fact, { what: `"${fact.words}"` })),
    ...work.waste.flatMap((fact, index) => checkTax(`waste[${index}]`, fact, { what: `"${fact.words}"` })),
  ];
}

function checkPours(fact: CoolantFact, index: number): FieldError[] {
  const known = new Set(fact.products.map((product) => product.id));
  const path = `coolant[${index}]`;
  const volume = (field: string, value: string): FieldError[] =>
    checkFigure(field, value, { what: 'The volume poured', sign: 'zero-or-more' });
  return [
    ...fact.products.flatMap((product, at) => [
      ...checkFigure(`${path}.products[${at}].pricePerL`, product.pricePerL, {
        what: `"${product.name}": the price per litre`,
        sign: 'zero-or-more',
      }),
      ...checkTax(`${path}.products[${at}]`, product, { what: `"${product.name}"` }),
    ]),
    ...fact.pours.flatMap((pour, at) => {
      const where = `${path}.pours[${at}]`;
      if (pour.kind !== 'new') return volume(`${where}.volumeL`, pour.volumeL);
      return pour.products.flatMap((product, part) => [
        ...volume(`${where}.products[${part}].volumeL`, product.volumeL),
        ...(known.has(product.productId)
          ? []
          : [
              {
                field: `${where}.products[${part}].productId`,
                message: 'This pour names a product that is not on the list. Choose one from the shelf.',
              },
            ]),
      ]);
    }),
  ];
}
