import { Injectable } from '@nestjs/common';
import { ifCurrent } from '#libs/db';
import { Audit } from '../../platform/audit.ts';
import { DomainError } from '../../platform/domain-error.ts';
import { UnitOfWork } from '../../platform/unit-of-work.ts';
import type { WorkshopDto } from './dto/workshop.dto.ts';

const figure = (typed: string): string => typed.replace(',', '.').replace('−', '-');

/** The owner changes what the workshop says of itself; an issued invoice keeps what it said then. */
@Injectable()
export class WorkshopService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly audit: Audit,
  ) {}

  async change({ address, version, isOnePerson, ...input }: WorkshopDto): Promise<void> {
    const data = {
      ...input,
      addressLines: address
        .split('\n')
        .map((line) => line.trim())
        .filter((line) => line !== ''),
      labourRate: figure(input.labourRate),
      partsMarkupPct: figure(input.partsMarkupPct),
      wasteChargePerL: figure(input.wasteChargePerL),
      vatRatePct: figure(input.vatRatePct),
      coldestAirC: figure(input.coldestAirC),
      hottestAirC: figure(input.hottestAirC),
      payWithinDays: Number(input.payWithinDays),
      returnLeadDays: Number(input.returnLeadDays),
      labelFromNet: figure(input.labelFromNet),
      altitudeM: Number(input.altitudeM),
      isOnePerson: isOnePerson === 'on',
    };
    await this.unitOfWork.run(async (tx) => {
      const row = await ifCurrent(
        tx.workshop.update({ where: { id: 1, version: Number(version) }, data: { ...data, version: { increment: 1 } } }),
      );
      if (!row)
        throw new DomainError('stale', 'changed-meanwhile', 'Somebody changed the workshop details in between. Look at them again.');
      await this.audit.record(tx, { action: 'changed', subject: 'workshop', subjectId: '1', after: data });
      return null;
    });
  }
}
