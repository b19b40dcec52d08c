import { Controller, Get, Query, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { Only } from '../../platform/access/access.decorator.ts';
import { AuditChain } from '../../platform/audit-chain.ts';
import { Clock } from '../../platform/clock.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { type OfficeView, presentOffice } from './office.presenter.ts';
import { RecordsRepository } from './records.repository.ts';

const JOBS = 15;
const DEBTS = 40;
const DAYS_30_MS = 30 * 24 * 3_600_000;

@ApiExcludeController()
@Controller('office')
@Only('owner')
export class OfficeController {
  constructor(
    private readonly records: RecordsRepository,
    private readonly chain: AuditChain,
    private readonly workshop: WorkshopFacts,
    private readonly clock: Clock,
  ) {}

  @Get()
  @Render('features/records/views/office.hbs')
  async office(@FormBack('debt') form: FormState, @Query('record') record: unknown): Promise<OfficeView> {
    const now = this.clock.now();
    const [jobs, exposure, passedWithout, debts, customersOwe, drumL, chain, { timeZone, currency }] = await Promise.all([
      this.records.jobMoney(JOBS),
      this.records.exposure(),
      this.records.passedWithout(new Date(now.getTime() - DAYS_30_MS)),
      this.records.openDebts(DEBTS),
      this.records.customersOwe(),
      this.records.drumL(),
      record === 'proved' ? this.chain.verify() : this.chain.state(),
      this.workshop.get(),
    ]);
    return presentOffice({ jobs, exposure, passedWithout, debts, customersOwe, drumL, chain, now, timeZone, currency, form });
  }
}
