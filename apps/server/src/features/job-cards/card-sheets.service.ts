import { Injectable } from '@nestjs/common';
import { CardFiguresRepository } from './card-figures.repository.ts';
import { CardFiguresService } from './card-figures.service.ts';
import type { CardSheet } from './card-sheet.ts';
import { JobCardsRepository } from './job-cards.repository.ts';

export type { CardSheet } from './card-sheet.ts';

/** Cards for a tablet to work on without the server. */
@Injectable()
export class CardSheets {
  constructor(
    private readonly rows: JobCardsRepository,
    private readonly figures: CardFiguresService,
    private readonly received: CardFiguresRepository,
  ) {}

  /** Those of these jobs that are on record, in this order. */
  async of(jobIds: readonly string[]): Promise<CardSheet[]> {
    const sheets: CardSheet[] = [];
    for (const id of jobIds) {
      const row = await this.rows.find(id);
      if (!row) continue;
      const [actions, known, lastReceived] = await Promise.all([
        this.rows.actions(id),
        this.figures.known(row),
        this.received.lastReceived(id),
      ]);
      sheets.push({ row, actions, known: { ...known, workshop: onlyFigures(known.workshop) }, lastReceived });
    }
    return sheets;
  }
}

/** Of the workshop's own facts only what a card reckons with leaves the server. */
function onlyFigures(workshop: CardSheet['known']['workshop']): CardSheet['known']['workshop'] {
  const { coldestAirC, freezeMarginK, jugMl, jugMarkMl, fillToleranceMl, topUpToleranceMl } = workshop;
  return { coldestAirC, freezeMarginK, jugMl, jugMarkMl, fillToleranceMl, topUpToleranceMl };
}
