import { Body, Controller, Get, HttpCode, Param, Post, Res } from '@nestjs/common';
import { ApiBody, ApiOkResponse } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { type Totals, totals } from '#libs/invoicing';
import { AnyStaff, Only, ChangesNothing } from '../../platform/access/access.decorator.ts';
import { DomainError } from '../../platform/domain-error.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { DocumentsService } from './documents.service.ts';
import type { InvoiceFileRow } from './invoices.repository.ts';

@Controller('api/v1/invoices')
export class InvoicesApiController {
  constructor(private readonly documents: DocumentsService) {}

  /**
   * Sums of an invoice to the cent (EN 16931 BR-CO-10 to 17): decimal strings in and out. The library itself checks the body,
   * which has more shapes than decorators can say.
   */
  @Post('totals')
  @AnyStaff()
  @ChangesNothing()
  @HttpCode(200)
  @ApiBody({
    description:
      '{ lines: [{ quantity, unitPrice, allowances?, charges?, vatCategory, vatRate }], allowances?, charges?, prepaid?, rounding? }',
    schema: { type: 'object' },
  })
  @ApiOkResponse({ description: 'lines, lineTotal, allowanceTotal, chargeTotal, taxExclusive, vat, vatTotal, taxInclusive, payable' })
  totals(@Body() input: Record<string, unknown>): Totals {
    const answer = totals(input);
    if (answer.ok) return answer.value;
    throw new DomainError('malformed', 'bad-invoice', 'These lines can’t be summed yet.', { errors: answer.errors });
  }

  /** The printed page of an issued invoice: the same bytes at every asking. */
  @Get(':id/document.pdf')
  @Only('desk', 'owner')
  async pdf(@Param('id', IdPipe) id: string, @Res() reply: FastifyReply): Promise<void> {
    const { bytes, mediaType } = await this.documents.pdf(id);
    await reply.type(mediaType).send(Buffer.from(bytes));
  }

  /** The same invoice as UBL 2.1 (EN 16931); 422 with what it lacks where it can't be structured. */
  @Get(':id/ubl.xml')
  @Only('desk', 'owner')
  async ubl(@Param('id', IdPipe) id: string, @Res() reply: FastifyReply): Promise<void> {
    await sendXml(reply, await this.documents.ubl(id));
  }

  /** The same invoice as CII D16B (EN 16931), as it is attached to a hybrid PDF. */
  @Get(':id/cii.xml')
  @Only('desk', 'owner')
  async cii(@Param('id', IdPipe) id: string, @Res() reply: FastifyReply): Promise<void> {
    await sendXml(reply, await this.documents.cii(id));
  }
}

async function sendXml(reply: FastifyReply, { bytes, mediaType }: InvoiceFileRow): Promise<void> {
  await reply.type(`${mediaType}; charset=utf-8`).send(Buffer.from(bytes));
}
