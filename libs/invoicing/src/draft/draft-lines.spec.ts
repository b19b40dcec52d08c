import { describe, expect, it } from '@jest/globals';
import { type DraftedWork, draftLines, type JobWork, type WorkPackage } from '../index.ts';

const tax = { vatCategory: 'S', vatRate: '20' } as const;
const yes: WorkPackage['answer'] = { kind: 'yes', authorisation: { by: 'Mrs Quill', at: '2026-06-09T16:40:00Z', how: 'phone' } };
const packageOf = (id: string, changes: Partial<WorkPackage> = {}): WorkPackage => ({
  id,
  name: `Package ${id}`,
  answer: yes,
  ceiling: null,
  ...changes,
});

const empty: JobWork = { packages: [packageOf('a')], ceiling: null, labour: [], parts: [], coolant: [], consumables: [], waste: [] };

const thermostat: JobWork = {
  ...empty,
  labour: [
    { packageId: 'a', words: 'Thermostat renewed', charge: { kind: 'menu', price: '95.00' }, ...tax },
    { packageId: 'a', words: 'Bleeding', charge: { kind: 'hours', hours: '0.5', ratePerHour: '62.00' }, ...tax },
  ],
  parts: [
    {
      packageId: 'a',
      name: 'Thermostat',
      partNumber: 'NR-5488',
      quantity: '1',
      unit: 'H87',
      place: 'fitted',
      price: { kind: 'marked-up', unitCost: '20.00', rule: { kind: 'percent', percent: '30' } },
      ...tax,
    },
    { packageId: 'a', name: 'Cap', quantity: '1', unit: 'H87', place: 'sold', price: { kind: 'set', unitPrice: '8.50' }, ...tax },
    {
      packageId: 'a',
      name: 'Thermostat',
      partNumber: 'NR-5492',
      quantity: '1',
      unit: 'H87',
      place: 'elsewhere',
      price: { kind: 'set', unitPrice: '31.90' },
      ...tax,
    },
  ],
  coolant: [
    {
      packageId: 'a',
      products: [
        { id: 'conc', name: 'Coolant concentrate', pricePerL: '9.80', ...tax },
        { id: 'water', name: 'Demineralised water', pricePerL: '0.60', ...tax },
        { id: 'unused', name: 'Ready-mixed', pricePerL: '6.00', ...tax },
      ],
      pours: [
        { kind: 'kept', volumeL: '1.2' },
        {
          kind: 'new',
          products: [
            { productId: 'conc', volumeL: '2' },
            { productId: 'water', volumeL: '1.9' },
          ],
        },
        {
          kind: 'new',
          products: [
            { productId: 'conc', volumeL: '0.45' },
            { productId: 'water', volumeL: '0.45' },
          ],
        },
      ],
    },
  ],
  consumables: [
    { packageId: 'a', words: 'Small materials', charge: { kind: 'share-of-labour', percent: '2', maximum: '5.00' }, ...tax },
    { packageId: 'a', words: 'Clips', charge: { kind: 'item', quantity: '2', unit: 'H87', unitPrice: '0.75' }, ...tax },
  ],
  waste: [
    {
      packageId: 'a',
      words: 'Waste charge, used coolant',
      drumNote: 'W-118',
      charge: { kind: 'volume', volumeL: '4.8', pricePerL: '0.90' },
      ...tax,
    },
  ],
};

function drafted(work: JobWork): DraftedWork {
  const answer = draftLines(work);
  if (!answer.ok) throw new Error(JSON.stringify(answer.errors));
  return answer.value;
}

describe('lines from a job', () => {
  const { lines, notBilled, taxInclusive } = drafted(thermostat);

  it('bills labour, parts, coolant, small materials and waste in that order', () => {
    expect(lines.map((line) => [line.id, line.kind, line.name, line.quantity, line.unit, line.unitPrice])).toEqual([
      ['1', 'labour', 'Thermostat renewed', '1', 'C62', '95.00'],
      ['2', 'labour', 'Bleeding', '0.5', 'HUR', '62.00'],
      ['3', 'part', 'Thermostat', '1', 'H87', '26.00'],
      ['4', 'part', 'Cap', '1', 'H87', '8.50'],
      ['5', 'coolant', 'Coolant concentrate', '2.45', 'LTR', '9.80'],
      ['6', 'coolant', 'Demineralised water', '2.35', 'LTR', '0.60'],
      ['7', 'consumable', 'Small materials', '1', 'C62', '2.52'],
      ['8', 'consumable', 'Clips', '2', 'H87', '0.75'],
      ['9', 'waste', 'Waste charge, used coolant, drum note W-118', '4.8', 'LTR', '0.90'],
    ]);
  });

  it('says what it does not bill: the variant not fitted, and the coolant put back', () => {
    expect(notBilled.map((entry) => [entry.what, entry.why])).toEqual([
      ['Thermostat NR-5492', 'It was neither fitted nor sold.'],
      ['1.2 L of coolant', "It is this car's own coolant, put back in."],
    ]);
  });

  it('sums with tax for the ceiling', () => {
    // 95 + 31 + 26 + 8.50 + 24.01 + 1.41 + 2.52 + 1.50 + 4.32 = 194.26, and 20 % of it 38.85.
    expect(taxInclusive).toBe('233.11');
  });

  it('never bills mix by the litre', () => {
    const work: JobWork = { ...empty, coolant: [{ packageId: 'a', products: [], pours: [{ kind: 'mix', volumeL: '4.8' }] }] };
    expect(drafted(work)).toMatchObject({
      lines: [],
      notBilled: [{ what: '4.8 L of mix', why: expect.stringContaining('Enter concentrate and water apart') }],
    });
  });

  it('caps the share of labour, and bills no labour without hours', () => {
    const work: JobWork = {
      ...thermostat,
      labour: [
        { packageId: 'a', words: 'Long job', charge: { kind: 'menu', price: '1000.00' }, ...tax },
        { packageId: 'a', words: 'Nothing done', charge: { kind: 'hours', hours: '0', ratePerHour: '62.00' }, ...tax },
      ],
    };
    const draft = drafted(work);
    expect(draft.lines.find((line) => line.name === 'Small materials')?.unitPrice).toBe('5.00');
    expect(draft.notBilled[0]).toMatchObject({ what: 'Nothing done', why: 'No hours are recorded for it.' });
  });
});

describe('only what the customer agreed to', () => {
  const labourOn = (packageId: string, price: string): JobWork['labour'][number] => ({
    packageId,
    words: `Work ${packageId}`,
    charge: { kind: 'menu', price },
    ...tax,
  });

  it.each<[string, Partial<WorkPackage>, RegExp]>([
    ['no-answer', { answer: { kind: 'open' } }, /has not answered on "Package b" \(120.00 with tax\)/],
    ['refused', { answer: { kind: 'no' } }, /said no to "Package b", but 120.00 of work is on it/],
    ['above-its-ceiling', { ceiling: '119.99' }, /comes to 120.00 with tax, the customer agreed to 119.99/],
  ])('holds back %s', (reason, changes, words) => {
    const draft = drafted({
      ...empty,
      packages: [packageOf('a'), packageOf('b', changes)],
      labour: [labourOn('a', '50.00'), labourOn('b', '100.00')],
    });
    expect(draft.lines.map((line) => line.name)).toEqual(['Work a']);
    expect(draft.held).toEqual([
      {
        packageId: 'b',
        name: 'Package b',
        reason,
        words: expect.stringMatching(words),
        taxExclusive: '100.00',
        taxInclusive: '120.00',
        lines: [expect.objectContaining({ name: 'Work b' })],
      },
    ]);
  });

  it('lets a package at its ceiling through', () => {
    expect(drafted({ ...empty, packages: [packageOf('a', { ceiling: '60.00' })], labour: [labourOn('a', '50.00')] }).held).toEqual([]);
  });

  it('holds back what would pass the ceiling of the job, and tries what fits', () => {
    const draft = drafted({
      ...empty,
      ceiling: '100.00',
      packages: [packageOf('a'), packageOf('b'), packageOf('c')],
      labour: [labourOn('a', '50.00'), labourOn('b', '100.00'), labourOn('c', '33.33')],
    });
    expect(draft.lines.map((line) => [line.id, line.name])).toEqual([
      ['1', 'Work a'],
      ['2', 'Work c'],
    ]);
    expect(draft).toMatchObject({ taxInclusive: '100.00', ceiling: '100.00' });
    expect(draft.held).toMatchObject([
      { reason: 'above-job-ceiling', words: expect.stringMatching(/job comes to 180.00 with tax, the customer agreed to 100.00/) },
    ]);
  });

  it('does not mention an open package that nothing was done under', () => {
    expect(drafted({ ...empty, packages: [packageOf('a', { answer: { kind: 'open' } })] })).toMatchObject({ lines: [], held: [] });
  });
});

describe('facts that cannot be drafted are answered with field and words', () => {
  const labour = thermostat.labour[0];
  const [part] = thermostat.parts;
  const [coolant] = thermostat.coolant;
  const [waste] = thermostat.waste;
  if (labour === undefined || part === undefined || coolant === undefined || waste === undefined)
    throw new Error('The sample has all kinds.');
  it.each<[Partial<JobWork>, string, RegExp]>([
    [{ labour: [{ ...labour, packageId: 'x' }] }, 'labour[0].packageId', /belongs to no package/],
    [
      { labour: [{ ...labour, charge: { kind: 'hours', hours: '1,5', ratePerHour: '62' } }] },
      'labour[0].charge.hours',
      /"1,5" is not a number/,
    ],
    [{ labour: [{ ...labour, vatRate: '0' }] }, 'labour[0].vatRate', /category S/],
    [
      { parts: [{ ...part, price: { kind: 'marked-up', unitCost: '1', rule: { kind: 'margin', percent: '100' } } }] },
      'parts[0].price.rule',
      /no selling price/,
    ],
    [{ parts: [{ ...part, quantity: '-1' }] }, 'parts[0].quantity', /below zero/],
    [
      { coolant: [{ ...coolant, pours: [{ kind: 'new', products: [{ productId: 'x', volumeL: '1' }] }] }] },
      'coolant[0].pours[0].products[0].productId',
      /not on the list/,
    ],
    [{ coolant: [{ ...coolant, pours: [{ kind: 'kept', volumeL: '' }] }] }, 'coolant[0].pours[0].volumeL', /is missing/],
    [
      { consumables: [{ packageId: 'a', words: 'x', charge: { kind: 'share-of-labour', percent: 'x' }, ...tax }] },
      'consumables[0].charge.percent',
      /not a number/,
    ],
    [{ waste: [{ ...waste, charge: { kind: 'fixed', price: '-1' } }] }, 'waste[0].charge.price', /below zero/],
    [{ ceiling: '100.001' }, 'ceiling', /more than 2 decimals/],
    [{ packages: [packageOf('a', { ceiling: 'x' })] }, 'packages[0].ceiling', /not a number/],
  ])('%#', (changes, field, words) => {
    expect(draftLines({ ...empty, ...changes })).toEqual({ ok: false, errors: [{ field, message: expect.stringMatching(words) }] });
  });
});
