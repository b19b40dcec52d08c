import { Body, Controller, Get, Post, Query, Req, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Anyone, AnyStaff, WithoutKey } from '../../platform/access/access.decorator.ts';
import { TABLET_COOKIE } from '../../platform/access/devices.ts';
import { localPath } from '../../platform/access/form-marks.ts';
import { KeptForms } from '../../platform/access/kept-forms.ts';
import { ownCookie } from '../../platform/access/own-cookie.ts';
import { requestState } from '../../platform/access/request-state.ts';
import { SESSION_COOKIE, Sessions } from '../../platform/access/sessions.ts';
import { DomainError } from '../../platform/domain-error.ts';
import { EMPTY_FORM, type FormState } from '../../platform/pages/form-state.ts';
import { homeOf } from '../../web/rooms.ts';
import { sendPage } from '../../web/page.ts';
import { LIGHT_COOKIE } from '../../web/shell.hooks.ts';
import { urls } from '../../web/urls.ts';
import { presentSignIn } from './door.presenter.ts';
import { SignInDto } from './dto/sign-in.dto.ts';
import { FirstOwnerService } from './first-owner.service.ts';
import { SignInService } from './sign-in.service.ts';

@ApiExcludeController()
@Controller()
export class DoorController {
  constructor(
    private readonly signIns: SignInService,
    private readonly sessions: Sessions,
    private readonly keptForms: KeptForms,
    private readonly firstOwner: FirstOwnerService,
  ) {}

  @Get()
  @Anyone()
  async home(@Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    const staff = requestState(request)?.session?.staff;
    await reply.redirect(staff ? homeOf(staff.role) : urls.door, 303);
  }

  @Get('sign-in')
  @Anyone()
  async door(
    @Query('back') back: unknown,
    @Query('secret') bySecret: unknown,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    if (await this.firstOwner.isNeeded()) return void (await reply.redirect(urls.firstOwner, 303));
    const page = localPath(back);
    // Whoever holds an enrolled tablet says who they are by PIN.
    if (bySecret !== '1' && request.cookies[TABLET_COOKIE] !== undefined) {
      return void (await reply.redirect(page === undefined ? urls.tablet : `${urls.tablet}?back=${encodeURIComponent(page)}`, 303));
    }
    await this.show(reply, { form: EMPTY_FORM, back: page });
  }

  @Post('sign-in')
  @Anyone()
  @WithoutKey()
  async signIn(@Body() input: SignInDto, @Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    const back = localPath(input.back);
    try {
      const { token, staffId, role } = await this.signIns.signIn({ name: input.name, secret: input.secret, from: request.ip });
      reply.setCookie(SESSION_COOKIE, token, ownCookie(request));
      const hasKept = (await this.keptForms.find(request, staffId)) !== undefined;
      await reply.redirect(hasKept ? urls.kept : (back ?? homeOf(role)), 303);
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
      const summary = [{ field: 'secret', message: error.message }];
      reply.status(error.kind === 'too-often' ? 429 : 401);
      await this.show(reply, { form: { values: { name: input.name }, errors: { secret: error.message }, summary }, back });
    }
  }

  @Post('sign-out')
  @AnyStaff()
  @WithoutKey()
  async signOut(@Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    await this.sessions.close(request.cookies[SESSION_COOKIE] ?? '');
    await reply.clearCookie(SESSION_COOKIE, ownCookie(request)).redirect(urls.door, 303);
  }

  @Post('light')
  @Anyone()
  @WithoutKey()
  async light(@Body() body: Record<string, unknown>, @Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    const year = 365 * 24 * 3600;
    reply.setCookie(LIGHT_COOKIE, body['light'] === 'sun' || body['light'] === 'bay' ? body['light'] : 'day', {
      ...ownCookie(request),
      httpOnly: false, // a tablet changes it without the server
      maxAge: year,
    });
    await reply.redirect(requestState(request)?.form?.page ?? '/', 303);
  }

  private async show(reply: FastifyReply, { form, back }: { form: FormState; back: string | undefined }): Promise<void> {
    await sendPage(reply, { layout: 'door', template: 'features/staff/views/sign-in.hbs', view: presentSignIn(form, back) });
  }
}
