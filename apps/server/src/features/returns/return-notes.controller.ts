import { Body, Controller, Get, Param, Post, Query, Redirect, Render, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { UNIT_PLACE_WORDS } from '#libs/unit-life';
import { Only } from '../../platform/access/access.decorator.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { urls } from '../../web/urls.ts';
import { HandOverDto, LeavingDto } from './dto/unit-acts.dto.ts';
import { Labels } from './labels.service.ts';
import { presentReturnNotePage, type ReturnNoteView } from './return-note.presenter.ts';
import { ReturnNotes } from './return-notes.service.ts';

/** The papers of the shelf: return notes and labels. */
@ApiExcludeController()
@Controller('returns-shelf')
@Only('desk', 'owner')
export class ReturnNotesController {
  constructor(
    private readonly notes: ReturnNotes,
    private readonly labels: Labels,
    private readonly workshop: WorkshopFacts,
    private readonly flashes: Flashes,
  ) {}

  @Post('hand-over/:supplierId/note')
  @Redirect('/', 303)
  async make(@Param('supplierId', IdPipe) supplierId: string, @Body() { units }: LeavingDto): Promise<{ url: string }> {
    return { url: urls.returnNote(await this.notes.make(supplierId, units)) };
  }

  @Get('notes/:id')
  @Render('features/returns/views/return-note.hbs')
  async note(@Param('id', IdPipe) id: string, @FormBack('hand-over') form: FormState): Promise<ReturnNoteView> {
    const [note, place] = await Promise.all([this.notes.get(id), this.workshop.get()]);
    return presentReturnNotePage(form, { ...note, ...place, places: UNIT_PLACE_WORDS });
  }

  @Post('notes/:id/hand-over')
  @Redirect('/', 303)
  async handOver(@Param('id', IdPipe) id: string, @Body() { evidence }: HandOverDto): Promise<{ url: string }> {
    const left = await this.notes.handOver(id, evidence);
    const words = `${left === 1 ? 'One piece has' : `${left} pieces have`} left: ${evidence}.`;
    return { url: await this.flashes.say(urls.returnNote(id), words) };
  }

  @Get('notes/:id/note.pdf')
  async pdf(@Param('id', IdPipe) id: string, @Res() reply: FastifyReply): Promise<void> {
    await sendPdf(reply, await this.labels.note(id), 'return-note');
  }

  @Get('labels.pdf')
  async sheet(@Query('order') order: unknown, @Res() reply: FastifyReply): Promise<void> {
    const orderId = typeof order === 'string' ? new IdPipe().transform(order) : undefined;
    await sendPdf(reply, await this.labels.sheet(orderId), 'labels');
  }

  @Get('units/:id/label.pdf')
  async label(@Param('id', IdPipe) id: string, @Res() reply: FastifyReply): Promise<void> {
    await sendPdf(reply, await this.labels.ofUnit(id), 'label');
  }
}

async function sendPdf(reply: FastifyReply, bytes: Uint8Array, name: string): Promise<void> {
  await reply.type('application/pdf').header('content-disposition', `inline; filename="${name}.pdf"`).send(Buffer.from(bytes));
}
