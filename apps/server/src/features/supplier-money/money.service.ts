import { Injectable } from '@nestjs/common';
import { DateTime } from 'luxon';
import { Clock } from '../../platform/clock.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { isoDay } from '../../web/dates.ts';
import { Documents } from '../supplier-documents/documents.service.ts';
import { Exposure, type ExposureRow } from '../returns/exposure.service.ts';
import { type CostRow, MoneyRepository, type MonthRow, type UnitRow, type UnitsWanted } from './money.repository.ts';

type Difference = Awaited<ReturnType<Documents['openDifferences']>>[number];

export interface MoneyAtSuppliers {
  exposure: readonly ExposureRow[];
  soon: readonly UnitRow[];
  months: readonly MonthRow[];
  families: readonly CostRow[];
  listings: readonly CostRow[];
  differences: readonly Difference[];
  today: string;
  currency: string;
}

const MONTHS = 12;
const SHOWN_SOON = 50;
const EXPORTED = 20_000;

/** The owner's evening question: which of our money lies where, since when, and what it costs us. */
@Injectable()
export class Money {
  constructor(
    private readonly rows: MoneyRepository,
    private readonly exposure: Exposure,
    private readonly documents: Documents,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
  ) {}

  async open(): Promise<MoneyAtSuppliers> {
    const { today, timeZone, currency, from } = await this.when();
    const [exposure, soon, months, costs, differences] = await Promise.all([
      this.exposure.bySupplier(),
      this.rows.units({ what: 'soon', most: SHOWN_SOON }, today, timeZone),
      this.rows.months(from, timeZone),
      this.rows.costs(from),
      this.documents.openDifferences(),
    ]);
    return { exposure, soon, months: everyMonth(months, today), ...costs, differences, today, currency };
  }

  async units(wanted: Omit<UnitsWanted, 'most'>, most = EXPORTED): Promise<{ units: UnitRow[]; currency: string }> {
    const { today, timeZone, currency } = await this.when();
    return { units: await this.rows.units({ ...wanted, most }, today, timeZone), currency };
  }

  private async when(): Promise<{ today: string; timeZone: string; currency: string; from: Date }> {
    const { timeZone, currency } = await this.workshop.get();
    const now = this.clock.now();
    const from = DateTime.fromJSDate(now, { zone: timeZone })
      .startOf('month')
      .minus({ months: MONTHS - 1 })
      .toJSDate();
    return { today: isoDay(now, timeZone), timeZone, currency, from };
  }
}

/** A month without money is a month, too. */
function everyMonth(rows: readonly MonthRow[], today: string): MonthRow[] {
  const last = DateTime.fromISO(today, { zone: 'utc' }).startOf('month');
  return Array.from({ length: MONTHS }, (_, index) => {
    const month = last.minus({ months: MONTHS - 1 - index }).toFormat('yyyy-MM');
    return rows.find((row) => row.month === month) ?? { month, recovered: '0', lost: '0' };
  });
}
