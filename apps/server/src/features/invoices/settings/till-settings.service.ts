import { Injectable } from '@nestjs/common';
import { Decimal } from '#libs/money';
import { Audit } from '../../../platform/audit.ts';
import { UnitOfWork } from '../../../platform/unit-of-work.ts';
import type { MenuPriceDto } from '../dto/menu-price.dto.ts';
import type { TillSettingsDto } from '../dto/till-settings.dto.ts';
import { badFigure, noSuchWork, settingsChanged } from '../invoices.errors.ts';
import { readPartsRule } from './parts-rule.ts';
import { type TillSettings, TillSettingsRepository } from './till-settings.repository.ts';

const figure = (typed: string): string => typed.replace(',', '.');
const figureOrNone = (typed: string): string | null => (typed === '' || new Decimal(figure(typed)).isZero() ? null : figure(typed));

/** What the owner decides for the till. An issued invoice keeps what it said then. */
@Injectable()
export class TillSettingsService {
  constructor(
    private readonly settings: TillSettingsRepository,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
  ) {}

  async change(input: TillSettingsDto): Promise<void> {
    const { rule, problems } = readPartsRule({
      kind: input.partsKind,
      figure: input.partsFigure,
      bands: input.partsBands,
      roundTo: input.partsRoundTo,
    });
    const [problem] = problems;
    if (problem !== undefined) throw badFigure(input.partsKind === 'bands' ? 'partsBands' : 'partsFigure', problem);
    if (input.vatCategory === 'E' && input.exemptionWords === '')
      throw badFigure('exemptionWords', 'Say why no VAT is charged: it must stand on each invoice.');
    const settings: TillSettings = {
      companyNumber: input.companyNumber,
      paper: input.paper,
      pdfForm: input.pdfForm,
      vatCategory: input.vatCategory,
      exemptionWords: input.exemptionWords,
      cashAccounting: input.cashAccounting === 'on',
      simplifiedLimit: figureOrNone(input.simplifiedLimit),
      depositForm: input.depositForm,
      partsRule: rule,
      consumablesPct: figureOrNone(input.consumablesPct) ?? '0',
      consumablesMost: figureOrNone(input.consumablesMost),
    };
    await this.unitOfWork.run(async (tx) => {
      if (!(await this.settings.save(tx, settings, Number(input.version)))) throw settingsChanged();
      const { partsRule, ...plain } = settings;
      await this.audit.record(tx, {
        action: 'changed',
        subject: 'till settings',
        subjectId: '1',
        after: { ...plain, partsRule: JSON.stringify(partsRule) },
      });
      return null;
    });
  }

  /** Labour of a kind of job at one price, or by the hours again. */
  async price({ templateKey, priceNet }: MenuPriceDto): Promise<void> {
    const price = figureOrNone(priceNet);
    await this.unitOfWork.run(async (tx) => {
      if (!(await this.settings.hasTemplate(tx, templateKey))) throw noSuchWork();
      await this.settings.saveMenuPrice(tx, templateKey, price);
      await this.audit.record(tx, { action: 'priced', subject: 'job template', subjectId: templateKey, after: { price } });
      return null;
    });
  }
}
