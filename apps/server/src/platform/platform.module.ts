import { type DynamicModule, Global, Module } from '@nestjs/common';
import type { Connection } from '#libs/db';
import { Devices } from './access/devices.ts';
import { KeptForms } from './access/kept-forms.ts';
import { Sessions } from './access/sessions.ts';
import { AuditChain } from './audit-chain.ts';
import { Audit } from './audit.ts';
import { Clock } from './clock.ts';
import { CONNECTION, PrismaService } from './database.ts';
import { Forgetting } from './forgetting.ts';
import { HealthController } from './health.controller.ts';
import { Flashes } from './pages/flash.ts';
import { Rounds, WORKS_BY_ITSELF } from './rounds.ts';
import { UnitOfWork } from './unit-of-work.ts';
import { WorkshopFacts } from './workshop-facts.ts';

export interface PlatformOptions {
  connection: Connection;
  /** Given by tests that stop the time. */
  clock?: Clock;
  worksByItself?: boolean;
}

const SHARED = [PrismaService, Sessions, Devices, KeptForms, Flashes, UnitOfWork, Audit, AuditChain, Forgetting, Rounds, WorkshopFacts];

@Global()
@Module({})
export class PlatformModule {
  static with({ connection, clock, worksByItself = true }: PlatformOptions): DynamicModule {
    return {
      module: PlatformModule,
      controllers: [HealthController],
      providers: [
        ...SHARED,
        { provide: CONNECTION, useValue: connection },
        { provide: WORKS_BY_ITSELF, useValue: worksByItself },
        { provide: Clock, useValue: clock ?? new Clock() },
      ],
      exports: [...SHARED, Clock],
    };
  }
}
