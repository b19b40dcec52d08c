import { Injectable } from '@nestjs/common';
import { Audit } from '../../../platform/audit.ts';
import { currentStaff } from '../../../platform/request-context.ts';
import { UnitOfWork } from '../../../platform/unit-of-work.ts';
import type { UnitsDto } from '../dto/units.dto.ts';
import { StaffUnitsRepository } from './staff-units.repository.ts';

/** How a person reads figures: kept with the person, so that it holds on every device. */
@Injectable()
export class UnitsService {
  constructor(
    private readonly staff: StaffUnitsRepository,
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
  ) {}

  async choose({ temperature, volume, pressure }: UnitsDto): Promise<void> {
    const { staffId } = currentStaff();
    await this.unitOfWork.run(async (tx) => {
      const { before, after } = await this.staff.change(tx, staffId, { temperature, volume, pressure });
      await this.audit.record(tx, { action: 'changed units', subject: 'staff', subjectId: staffId, before, after });
      return null;
    });
  }
}
