import { Body, Controller, Get, Post, Query, Req, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Anyone, WithoutKey } from '../../platform/access/access.decorator.ts';
import { Devices, TABLET_COOKIE } from '../../platform/access/devices.ts';
import { localPath } from '../../platform/access/form-marks.ts';
import { ownCookie } from '../../platform/access/own-cookie.ts';
import { SESSION_COOKIE } from '../../platform/access/sessions.ts';
import { DomainError } from '../../platform/domain-error.ts';
import { sendPage } from '../../web/page.ts';
import { urls } from '../../web/urls.ts';
import { EnrolTabletDto } from './dto/tablet.dto.ts';
import { PinFormDto } from './dto/pin-sign-in.dto.ts';
import { PinSignIns } from './pin-sign-in.service.ts';
import { keepTabletCookie } from './tablet-cookie.ts';
import { presentEnrol, presentPin } from './tablet-door.presenter.ts';
import { Tablets } from './tablets.service.ts';
import { TabletsRepository } from './tablets.repository.ts';

/** The way in on a tablet: a code makes it one of ours, a PIN says who holds it. Works without script. */
@ApiExcludeController()
@Controller('tablet')
@Anyone()
@WithoutKey()
export class TabletDoorController {
  constructor(
    private readonly devices: Devices,
    private readonly tablets: Tablets,
    private readonly rows: TabletsRepository,
    private readonly signIns: PinSignIns,
  ) {}

  @Get()
  async door(@Query('back') back: unknown, @Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    await this.show(request, reply, { back: localPath(back) });
  }

  /** What the tablet shows by itself when the server is away: nothing of the workshop is in it. */
  @Get('shell')
  async shell(@Res() reply: FastifyReply): Promise<void> {
    const view = { title: 'Job card', scripts: ['tablet.js'], sent: { state: 'saved', bold: 'Starting', text: '' } };
    await sendPage(reply, { layout: 'tablet', template: 'features/tablets/views/shell.hbs', view });
  }

  @Post('enrol')
  async enrol(@Body() { code }: EnrolTabletDto, @Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    try {
      keepTabletCookie(request, reply, await this.tablets.enrol(code, request.ip));
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
      reply.status(error.kind === 'too-often' ? 429 : 422);
      return this.show(request, reply, { error: error.message });
    }
    await reply.redirect(urls.tablet, 303);
  }

  @Post('sign-in')
  async signIn(
    @Body() { back: typedBack, ...input }: PinFormDto,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const tablet = await this.devices.find(request.cookies[TABLET_COOKIE]);
    if (!tablet) return void (await reply.redirect(urls.tablet, 303));
    const back = localPath(typedBack);
    try {
      const { token } = await this.signIns.signIn(tablet, input);
      reply.setCookie(SESSION_COOKIE, token, ownCookie(request));
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
      reply.status(error.kind === 'too-often' ? 429 : 401);
      return this.show(request, reply, { error: error.message, back, staffId: input.staffId });
    }
    await reply.redirect(back ?? urls.bays, 303);
  }

  private async show(
    request: FastifyRequest,
    reply: FastifyReply,
    said: { error?: string; back?: string | undefined; staffId?: string },
  ): Promise<void> {
    const tablet = await this.devices.find(request.cookies[TABLET_COOKIE]);
    if (tablet) keepTabletCookie(request, reply);
    const view = tablet ? presentPin(tablet, await this.rows.people(), said) : presentEnrol(said.error);
    await sendPage(reply, { layout: 'door', template: 'features/tablets/views/door.hbs', view });
  }
}
