import { Injectable } from '@nestjs/common';
import { type DbClient, violatedConstraint } from '#libs/db';
import { Audit } from '../../platform/audit.ts';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { builtBetween, monthsBetween } from './built-between.ts';
import type { ListingDto, PriceDto, StatementDto, VariantDto } from './dto/variant.dto.ts';
import { noSense, notOnTheList, noVariant, partNumberTaken, withdrawnAlready } from './purchasing.errors.ts';
import { readStatement } from './read-statement.ts';
import { SuppliersRepository } from './suppliers.repository.ts';
import { type FamilyRow, type NewListing, type NewStatement, type Variant, VariantsRepository } from './variants.repository.ts';

export type { Variant } from './variants.repository.ts';

export interface Engine {
  engineCode: string;
  buildYear: number | null;
  buildMonth: number | null;
}

const decimal = (typed: string): string => typed.replace(',', '.');

function listingOf({ engineCode, builtFrom, builtTo, catalogue }: ListingDto): NewListing {
  const { from, to } = monthsBetween(builtFrom, builtTo);
  if (from !== null && to !== null && to < from) throw noSense('builtTo', 'The last month comes before the first: swap them.');
  return { engineCode: engineCode.toUpperCase(), builtFrom: from, builtTo: to, catalogue };
}

/** Part numbers, where they are listed and what is said of them: differing statements are kept side by side. */
@Injectable()
export class Variants {
  constructor(
    private readonly variants: VariantsRepository,
    private readonly suppliers: SuppliersRepository,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  families(): Promise<FamilyRow[]> {
    return this.variants.families();
  }

  search(words: string): Promise<Variant[]> {
    return this.variants.search(words);
  }

  /** Empty where the engine is not known: a list for any engine would be no list. */
  async listedFor(engine: Engine, db?: DbClient): Promise<Variant[]> {
    return engine.engineCode === '' ? [] : this.variants.listedFor(engine.engineCode, builtBetween(engine), db);
  }

  ofSupplier(supplierId: string): Promise<Variant[]> {
    return this.variants.ofSupplier(supplierId);
  }

  byIds(ids: readonly string[], db?: DbClient): Promise<Variant[]> {
    return this.variants.byIds(ids, db);
  }

  async get(id: string, db?: DbClient): Promise<Variant> {
    const variant = await this.variants.find(id, db);
    if (!variant) throw noVariant();
    return variant;
  }

  async add(input: VariantDto): Promise<string> {
    const { partNumber, name } = input;
    const families = await this.families();
    const row = families.find(({ family }) => family.id === input.family);
    if (!row) throw notOnTheList('family');
    if (!(await this.suppliers.find(input.supplierId))) throw notOnTheList('supplierId');
    const statements = this.statementsOf(row, input);
    const listing = listingOf(input);
    try {
      return await this.unitOfWork.run(async (tx) => {
        const money = { priceNet: decimal(input.priceNet), coreCharge: decimal(input.coreCharge) };
        const id = await this.variants.create(tx, { familyId: row.id, supplierId: input.supplierId, partNumber, name, ...money });
        await this.variants.list(tx, id, listing);
        await this.variants.state(tx, id, statements);
        const after = { partNumber, name, ...money, engineCode: listing.engineCode, statements: statements.length };
        await this.audit.record(tx, { action: 'added', subject: 'variant', subjectId: id, after });
        return id;
      });
    } catch (error) {
      if (violatedConstraint(error) === 'part_variant_supplier_id_part_number_key') throw partNumberTaken(partNumber);
      throw error;
    }
  }

  async state(id: string, { feature: key, value, provenance }: StatementDto): Promise<void> {
    const variant = await this.get(id);
    const feature = variant.family.features.find((one) => one.key === key);
    if (!feature) throw notOnTheList('feature');
    const read = readStatement(variant.family, feature, value);
    if (!read.ok) throw noSense('value', read.message);
    const { figure, words } = read;
    const said = { feature: key, figure, words, provenance, saidById: currentStaff().staffId, saidAt: this.clock.now() };
    await this.unitOfWork.run(async (tx) => {
      await this.variants.state(tx, id, [said]);
      await this.audit.record(tx, {
        action: 'stated',
        subject: 'variant',
        subjectId: id,
        after: { feature: key, figure, words, provenance },
      });
      return null;
    });
  }

  /** @returns the variant's id. */
  async withdraw(statementId: string): Promise<string> {
    return this.unitOfWork.run(async (tx) => {
      const id = await this.variants.withdraw(tx, statementId, this.clock.now());
      if (id === undefined) throw withdrawnAlready();
      await this.audit.record(tx, { action: 'withdrew a statement', subject: 'variant', subjectId: id, after: { statement: statementId } });
      return id;
    });
  }

  async list(id: string, input: ListingDto): Promise<void> {
    const listing = listingOf(input);
    await this.get(id);
    await this.unitOfWork.run(async (tx) => {
      await this.variants.list(tx, id, listing);
      await this.audit.record(tx, { action: 'listed', subject: 'variant', subjectId: id, after: { engineCode: listing.engineCode } });
      return null;
    });
  }

  async reprice(id: string, input: PriceDto): Promise<void> {
    const priceNet = decimal(input.priceNet);
    await this.unitOfWork.run(async (tx) => {
      const before = await this.get(id, tx);
      await this.variants.reprice(tx, id, priceNet);
      const change = { before: { priceNet: before.priceNet }, after: { priceNet } };
      await this.audit.record(tx, { action: 'changed the price', subject: 'variant', subjectId: id, ...change });
      return null;
    });
  }

  private statementsOf({ family }: FamilyRow, { feature: keys, value: typed, provenance }: VariantDto): NewStatement[] {
    const saidBy = { provenance, saidById: currentStaff().staffId, saidAt: this.clock.now() };
    return keys.flatMap((key, index) => {
      const text = typed[index] ?? '';
      if (text === '') return [];
      const feature = family.features.find((one) => one.key === key);
      if (!feature) throw notOnTheList(`value.${index}`);
      const read = readStatement(family, feature, text);
      if (!read.ok) throw noSense(`value.${index}`, read.message);
      return [{ feature: key, figure: read.figure, words: read.words, ...saidBy }];
    });
  }
}
