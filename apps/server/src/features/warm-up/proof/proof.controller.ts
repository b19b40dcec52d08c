import { Controller, Get, Param, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { AnyStaff } from '../../../platform/access/access.decorator.ts';
import { IdPipe } from '../../../platform/id.pipe.ts';
import { ProofService } from './proof.service.ts';

/** Proof sheets as printed; older versions stay as they were. */
@ApiExcludeController()
@Controller('run-up')
@AnyStaff()
export class ProofController {
  constructor(private readonly proof: ProofService) {}

  @Get('jobs/:id/proof.pdf')
  async newest(@Param('id', IdPipe) id: string, @Res() reply: FastifyReply): Promise<void> {
    await this.send((await this.proof.newest(id)).id, reply);
  }

  @Get('proofs/:id/sheet.pdf')
  async sheet(@Param('id', IdPipe) id: string, @Res() reply: FastifyReply): Promise<void> {
    await this.send(id, reply);
  }

  private async send(sheetId: string, reply: FastifyReply): Promise<void> {
    const { sheet, bytes } = await this.proof.pdf(sheetId);
    const name = `proof-sheet-version-${sheet.version}.pdf`;
    await reply.type('application/pdf').header('content-disposition', `inline; filename="${name}"`).send(Buffer.from(bytes));
  }
}
