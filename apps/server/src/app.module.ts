import { type DynamicModule, Module } from '@nestjs/common';
import { APP_FILTER, APP_GUARD } from '@nestjs/core';
import { AccessGuard } from './platform/access/access.guard.ts';
import { PdfModule } from './platform/pdf/pdf.module.ts';
import { PlatformModule, type PlatformOptions } from './platform/platform.module.ts';
import { ProblemFilter } from './platform/problem.filter.ts';
import { BookingsModule } from './features/bookings/bookings.module.ts';
import { CoolantModule } from './features/coolant/coolant.module.ts';
import { CustomersModule } from './features/customers/customers.module.ts';
import { EstimatesModule } from './features/estimates/estimates.module.ts';
import { FitmentModule } from './features/fitment/fitment.module.ts';
import { InvoicesModule } from './features/invoices/invoices.module.ts';
import { JobCardsModule } from './features/job-cards/job-cards.module.ts';
import { PhotosModule } from './features/photos/photos.module.ts';
import { PurchasingModule } from './features/purchasing/purchasing.module.ts';
import { RecordsModule } from './features/records/records.module.ts';
import { StaffModule } from './features/staff/staff.module.ts';
import { TabletsModule } from './features/tablets/tablets.module.ts';
import { WarmUpModule } from './features/warm-up/warm-up.module.ts';
import { SupplierDocumentsModule } from './features/supplier-documents/supplier-documents.module.ts';
import { SupplierMoneyModule } from './features/supplier-money/supplier-money.module.ts';

@Module({})
export class AppModule {
  static with(options: PlatformOptions): DynamicModule {
    return {
      module: AppModule,
      imports: [
        PlatformModule.with(options),
        PdfModule,
        StaffModule,
        CustomersModule,
        EstimatesModule,
        BookingsModule,
        JobCardsModule,
        CoolantModule,
        InvoicesModule,
        RecordsModule,
        FitmentModule,
        PurchasingModule,
        WarmUpModule,
        PhotosModule,
        SupplierDocumentsModule,
        TabletsModule,
        SupplierMoneyModule,
      ],
      providers: [
        { provide: APP_FILTER, useClass: ProblemFilter },
        { provide: APP_GUARD, useClass: AccessGuard },
      ],
    };
  }
}
