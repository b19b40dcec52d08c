import { Injectable } from '@nestjs/common';
import { PdfRenderer } from '../../../platform/pdf/pdf-renderer.ts';
import { WorkshopFacts } from '../../../platform/workshop-facts.ts';
import { noPayment } from '../invoices.errors.ts';
import { PaymentsRepository } from './payments.repository.ts';
import { presentReceipt } from './receipt.presenter.ts';

/** What the customer gets in hand for money: made from the payment, which never changes. */
@Injectable()
export class ReceiptService {
  constructor(
    private readonly payments: PaymentsRepository,
    private readonly renderer: PdfRenderer,
    private readonly workshop: WorkshopFacts,
  ) {}

  async pdf(paymentId: string): Promise<Uint8Array> {
    const payment = await this.payments.find(paymentId);
    if (!payment) throw noPayment();
    const workshop = await this.workshop.get();
    return this.renderer.render({
      template: 'features/invoices/views/receipt.hbs',
      view: presentReceipt(payment, workshop),
      paper: workshop.paper,
    });
  }
}
