import { Body, Controller, Delete, HttpCode, Post, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Anyone, AnyStaff, ChangesNothing } from '../../platform/access/access.decorator.ts';
import { ownCookie } from '../../platform/access/own-cookie.ts';
import { SESSION_COOKIE, Sessions } from '../../platform/access/sessions.ts';
import type { Role } from '../../platform/request-context.ts';
import { SignInDto } from './dto/sign-in.dto.ts';
import { SignInService } from './sign-in.service.ts';

@Controller('api/v1/session')
@ChangesNothing()
export class SessionApiController {
  constructor(
    private readonly signIns: SignInService,
    private readonly sessions: Sessions,
  ) {}

  /** Signs in: the answer carries the session's cookie. Only failures count towards the limit. */
  @Post()
  @Anyone()
  @HttpCode(200)
  async open(
    @Body() { name, secret }: SignInDto,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<{ role: Role }> {
    const { token, role } = await this.signIns.signIn({ name, secret, from: request.ip });
    reply.setCookie(SESSION_COOKIE, token, ownCookie(request));
    return { role };
  }

  /** Signs out. */
  @Delete()
  @AnyStaff()
  @HttpCode(204)
  async close(@Req() request: FastifyRequest, @Res({ passthrough: true }) reply: FastifyReply): Promise<void> {
    await this.sessions.close(request.cookies[SESSION_COOKIE] ?? '');
    reply.clearCookie(SESSION_COOKIE, ownCookie(request));
  }
}
