import { Injectable } from '@nestjs/common';
import type { Device } from '../../platform/access/devices.ts';
import { Clock } from '../../platform/clock.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { dayBounds } from '../../web/dates.ts';
import { JobsService } from '../bookings/jobs.service.ts';
import { type CardSheet, CardSheets } from '../job-cards/card-sheets.service.ts';
import type { TabletFacts } from './tablet-facts.ts';
import { TabletsRepository } from './tablets.repository.ts';

/** Debts that are ended by a step of the card. */
const ON_THE_CARD: ReadonlySet<string> = new Set(['level-check', 'after-log', 'waste']);
const MOST_OWING = 40;

/** Everything that a tablet works with while the server is away. */
export interface TabletDay extends TabletFacts {
  cards: CardSheet[];
}

@Injectable()
export class TabletDays {
  constructor(
    private readonly jobs: JobsService,
    private readonly sheets: CardSheets,
    private readonly tablets: TabletsRepository,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
  ) {}

  /** The cars that stand here or are expected today, and those that still owe something to be done. */
  async of(tablet: Device): Promise<TabletDay> {
    const now = this.clock.now();
    const { timeZone, isOnePerson } = await this.workshop.get();
    const { here, owing } = await this.jobs.ofDay(dayBounds(now, timeZone));
    const owingWork = owing.filter(({ debts }) => debts.some(({ kind }) => ON_THE_CARD.has(kind))).slice(0, MOST_OWING);
    const [cards, people, lastSeq, missing] = await Promise.all([
      this.sheets.of([...here, ...owingWork].map(({ id }) => id)),
      this.tablets.people(),
      this.tablets.lastSeq(tablet.id),
      this.tablets.missing(tablet.id),
    ]);
    return { tablet, now: now.toISOString(), timeZone, onePersonSite: isOnePerson, people, cards, lastSeq, missing };
  }
}
