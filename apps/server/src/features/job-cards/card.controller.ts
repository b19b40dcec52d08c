import { Body, Controller, Get, Param, Post, Query, Redirect, Req, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { AnyStaff } from '../../platform/access/access.decorator.ts';
import { TABLET_COOKIE } from '../../platform/access/devices.ts';
import { requestState } from '../../platform/access/request-state.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { formBack } from '../../platform/pages/flash.ts';
import { Files } from '../../platform/uploads/files.decorator.ts';
import type { UploadedFile } from '../../platform/uploads/request-files.ts';
import { TakesFiles } from '../../platform/uploads/takes-files.decorator.ts';
import { sendPage } from '../../web/page.ts';
import { LIGHT_COOKIE } from '../../web/shell.hooks.ts';
import { urls } from '../../web/urls.ts';
import { MOST_SENT_BYTES } from '../photos/photos.service.ts';
import { CardActs } from './card-acts.service.ts';
import { CardFiguresService } from './card-figures.service.ts';
import type { TypedFields } from './card-form/typed-form.ts';
import { presentCard } from './card-page/present-card.ts';
import { CardPages } from './card-page.service.ts';
import { CardFactDto } from './dto/card-fact.dto.ts';

/** The technician's job card: one step large, the others beside it, every act a plain form. */
@ApiExcludeController()
@Controller('bays/jobs/:id/card')
@AnyStaff()
export class CardController {
  constructor(
    private readonly pages: CardPages,
    private readonly acts: CardActs,
    private readonly figures: CardFiguresService,
  ) {}

  @Get()
  async card(
    @Param('id', IdPipe) id: string,
    @Query('step') step: unknown,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const page = await this.pages.page(id, step === undefined || typeof step === 'string' ? step : '');
    const light = request.cookies[LIGHT_COOKIE] ?? 'day';
    const isTablet = request.cookies[TABLET_COOKIE] !== undefined;
    const view = presentCard({ ...page, isTablet, formState: (name) => formBack(request, name) }, light);
    await sendPage(reply, { layout: 'tablet', template: 'features/job-cards/views/card.hbs', view });
  }

  @Post('actions')
  @TakesFiles({ mostFiles: 1, mostBytes: MOST_SENT_BYTES })
  @Redirect('/', 303)
  async act(
    @Param('id', IdPipe) id: string,
    @Body() fields: TypedFields,
    @Files('photo') [photo]: readonly UploadedFile[],
    @Req() request: FastifyRequest,
  ): Promise<{ url: string }> {
    const form = requestState(request)?.form;
    const { step, isFinished } = await this.acts.act(id, fields ?? {}, { key: form?.key ?? '', photo });
    if (isFinished) return { url: urls.card(id) };
    return { url: step === null ? backTo(form?.page, id) : urls.cardStep(id, step) };
  }

  @Post('facts')
  @Redirect('/', 303)
  async state(@Param('id', IdPipe) id: string, @Body() input: CardFactDto): Promise<{ url: string }> {
    await this.figures.state(id, input);
    return { url: urls.cardStep(id, input.step) };
  }
}

/** The page that the form stood on, where it is this card's. */
function backTo(page: string | undefined, jobId: string): string {
  return page?.startsWith(urls.card(jobId)) === true ? page : urls.card(jobId);
}
