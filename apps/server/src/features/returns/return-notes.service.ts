import { Injectable } from '@nestjs/common';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import { Clock } from '../../platform/clock.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { leftAlready, noNote, nothingLeaves } from './returns.errors.ts';
import { type ReturnNoteRow, ReturnNotesRepository } from './return-notes.repository.ts';
import { UnitActs } from './unit-acts.service.ts';
import { type Unit, UnitsRepository } from './units.repository.ts';
import { Units } from './units.service.ts';

export interface ReturnNote {
  note: ReturnNoteRow;
  units: readonly Unit[];
}

/** The paper that goes into the box: made before the driver comes, signed when it leaves. */
@Injectable()
export class ReturnNotes {
  constructor(
    private readonly notes: ReturnNotesRepository,
    private readonly rows: UnitsRepository,
    private readonly units: Units,
    private readonly acts: UnitActs,
    private readonly unitOfWork: UnitOfWork,
    private readonly clock: Clock,
  ) {}

  async get(id: string): Promise<ReturnNote> {
    const note = await this.notes.find(id);
    if (!note) throw noNote();
    return { note, units: await this.rows.byIds(note.unitIds) };
  }

  waiting(): Promise<ReturnNoteRow[]> {
    return this.notes.waiting();
  }

  ofUnit(unitId: string): Promise<ReturnNoteRow[]> {
    return this.notes.ofUnit(unitId);
  }

  /** For pieces of one supplier that are on their way back. @returns its id. */
  async make(supplierId: string, unitIds: readonly string[]): Promise<string> {
    const units = await this.rows.byIds([...new Set(unitIds)]);
    const leaving = units.filter(({ place, variant }) => place === 'to-return' && variant.supplier.id === supplierId);
    if (leaving.length === 0 || leaving.length < new Set(unitIds).size) throw nothingLeaves();
    return this.unitOfWork.run((tx) =>
      this.notes.create(
        tx,
        { supplierId, madeAt: this.clock.now(), madeById: currentStaff().staffId },
        leaving.map(({ id }) => id),
      ),
    );
  }

  /** What of it still waits here leaves with one signature; what has gone elsewhere meanwhile does not. @returns how many left. */
  async handOver(id: string, evidence: string): Promise<number> {
    return this.unitOfWork.run(async (tx) => {
      const note = await this.notes.find(id, tx);
      if (!note) throw noNote();
      if (!(await this.notes.leave(tx, id, { at: this.clock.now(), evidence }))) throw leftAlready();
      let left = 0;
      for (const unitId of [...note.unitIds].sort()) {
        const unit = await this.units.hold(tx, unitId);
        if (unit.place !== 'to-return') continue;
        await this.acts.leave(tx, unit, evidence);
        left += 1;
      }
      if (left === 0) throw nothingLeaves();
      return left;
    });
  }
}
