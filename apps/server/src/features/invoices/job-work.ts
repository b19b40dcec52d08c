import type { CardState } from '#libs/checklist';
import type { Authorisation, JobWork, TaxTreatment, WorkPackage } from '#libs/invoicing';
import type { Workshop } from '../../platform/workshop-facts.ts';
import type { BillFacts } from './job-bill.repository.ts';
import { partsRuleOf } from './settings/parts-rule.ts';

const HOUR_MS = 3_600_000;

type Rates = Pick<
  Workshop,
  'labourRate' | 'partsMarkupPct' | 'partsRule' | 'wasteChargePerL' | 'vatRatePct' | 'vatCategory' | 'consumablesPct' | 'consumablesMost'
>;

/** The tax on what the workshop sells: a rate only where one is charged. */
export function workshopTax({ vatCategory, vatRatePct }: Pick<Workshop, 'vatCategory' | 'vatRatePct'>): TaxTreatment {
  return { vatCategory, vatRate: vatCategory === 'O' ? null : vatCategory === 'S' ? vatRatePct : '0' };
}

/** Hours really worked by the card's clock, else those that the template plans with hands on the car. */
export function labourHours(card: CardState): { hours: string; isRecorded: boolean } {
  const workedMs = card.workTimes.reduce(
    (sum, { startedAt, stoppedAt }) => sum + (stoppedAt === null ? 0 : Math.max(0, Date.parse(stoppedAt) - Date.parse(startedAt))),
    0,
  );
  if (workedMs > 0) return { hours: (workedMs / HOUR_MS).toFixed(2), isRecorded: true };
  const minutes = card.template.phases.reduce((sum, phase) => sum + (phase.attendance === 'hands-on' ? phase.minutes : 0), 0);
  return { hours: (minutes / 60).toFixed(2), isRecorded: false };
}

function packagesOf({ packages }: BillFacts): WorkPackage[] {
  return packages.map(({ id, name, saidBy, saidAt, how }) => {
    const authorisation: Authorisation = { by: saidBy, at: saidAt, how: how === 'signature' ? 'in-person' : (how as Authorisation['how']) };
    return { id, name, ceiling: null, answer: { kind: 'yes', authorisation } };
  });
}

/** What was done, in the template's own words. @example workWords(card) // 'Thermostat renewed, coolant part drained and made up again' */
export function workWords({ template }: CardState): string {
  return template.about.split('. ')[0]?.replace(/\.$/, '') ?? template.name;
}

const UNSAID = 'unsaid';

/** What the job has to show for itself, as the invoicing library bills it. Everything belongs to the last package said yes to. */
export function jobWork(facts: BillFacts, card: CardState, rates: Rates): JobWork {
  const said = packagesOf(facts);
  const packages: WorkPackage[] =
    said.length > 0 ? said : [{ id: UNSAID, name: facts.templateName, ceiling: null, answer: { kind: 'open' } }];
  const packageId = packages.at(-1)?.id ?? UNSAID;
  const tax = workshopTax(rates);
  const rule = partsRuleOf(rates);
  const productL = card.facts.filledProductL.toFixed(3);
  const wasteL = card.facts.numbers['wasteBookedL']?.value ?? 0;
  const { hours } = labourHours(card);
  return {
    packages,
    ceiling: facts.ceilingGross,
    labour: [
      {
        packageId,
        ...tax,
        words: workWords(card),
        charge:
          facts.menuPrice === null ? { kind: 'hours', hours, ratePerHour: rates.labourRate } : { kind: 'menu', price: facts.menuPrice },
      },
    ],
    parts: facts.fittedUnits.map((unit) => ({
      packageId,
      ...tax,
      name: unit.name,
      partNumber: unit.partNumber,
      quantity: '1',
      unit: 'H87',
      place: 'fitted',
      price: { kind: 'marked-up', unitCost: unit.costNet, rule },
    })),
    coolant:
      facts.coolant === null || Number(productL) === 0
        ? []
        : [
            {
              packageId,
              products: [{ ...tax, id: facts.coolant.id, name: facts.coolant.name, pricePerL: facts.coolant.pricePerL }],
              pours: [{ kind: 'new', products: [{ productId: facts.coolant.id, volumeL: productL }] }],
            },
          ],
    consumables: Number(rates.consumablesPct) === 0 ? [] : [smallMaterials(rates, { packageId, tax })],
    waste:
      wasteL === 0
        ? []
        : [
            {
              packageId,
              ...tax,
              words: 'Used coolant, disposal',
              charge: { kind: 'volume', volumeL: wasteL.toFixed(3), pricePerL: rates.wasteChargePerL },
            },
          ],
  };
}

/** A share of the labour, with a cap where the owner set one. */
function smallMaterials(
  { consumablesPct: percent, consumablesMost: maximum }: Rates,
  { packageId, tax }: { packageId: string; tax: TaxTreatment },
): JobWork['consumables'][number] {
  const charge = { kind: 'share-of-labour', percent, ...(maximum === null ? {} : { maximum }) } as const;
  return { packageId, ...tax, words: 'Small materials', charge };
}
