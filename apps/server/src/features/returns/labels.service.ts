import { Injectable } from '@nestjs/common';
import { Clock } from '../../platform/clock.ts';
import { PdfRenderer } from '../../platform/pdf/pdf-renderer.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { presentLabels } from './labels.presenter.ts';
import { needsLabel } from './needs-label.ts';
import { presentReturnNote } from './return-note.presenter.ts';
import { ReturnNotes } from './return-notes.service.ts';
import { noLabels } from './returns.errors.ts';
import { type Unit, UnitsRepository } from './units.repository.ts';
import { Units } from './units.service.ts';

/** What is printed for the shelf: labels for pieces, the note for what leaves. */
@Injectable()
export class Labels {
  constructor(
    private readonly units: Units,
    private readonly rows: UnitsRepository,
    private readonly notes: ReturnNotes,
    private readonly workshop: WorkshopFacts,
    private readonly renderer: PdfRenderer,
    private readonly clock: Clock,
  ) {}

  async ofUnit(id: string): Promise<Uint8Array> {
    return this.print([await this.units.get(id)]);
  }

  /** Of an order's pieces, or of all that lie here and are on their way. */
  async sheet(orderId: string | undefined): Promise<Uint8Array> {
    const units = orderId === undefined ? await this.rows.at(['expected', 'set-aside', 'to-return']) : await this.units.ofOrder(orderId);
    const { labelFromNet } = await this.workshop.get();
    return this.print(units.filter((unit) => needsLabel(unit, labelFromNet)));
  }

  async note(id: string): Promise<Uint8Array> {
    const [{ note, units }, workshop, names] = await Promise.all([this.notes.get(id), this.workshop.get(), this.units.staffNames()]);
    const view = presentReturnNote({ note, units, workshop, who: names.get(note.madeById) ?? '', now: this.clock.now() });
    return this.renderer.render({ template: 'features/returns/views/return-note-print.hbs', view, paper: 'a4' });
  }

  private async print(units: readonly Unit[]): Promise<Uint8Array> {
    if (units.length === 0) throw noLabels();
    return this.renderer.render({ template: 'features/returns/views/labels.hbs', view: presentLabels(units), paper: 'a4' });
  }
}
