import { Body, Controller, Get, HttpCode, Param, Post, Put, Query, Req, Res } from '@nestjs/common';
import { ApiBody, ApiConsumes } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { TabletOnly, WithoutKey } from '../../platform/access/access.decorator.ts';
import { ownCookie } from '../../platform/access/own-cookie.ts';
import { currentTablet, requestState } from '../../platform/access/request-state.ts';
import { SESSION_COOKIE, Sessions } from '../../platform/access/sessions.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import type { Role } from '../../platform/request-context.ts';
import { TakesPictures } from '../../platform/uploads/takes-pictures.decorator.ts';
import { pictureBody } from '../photos/photos.service.ts';
import { PinSignInDto } from './dto/pin-sign-in.dto.ts';
import { type TabletAnswersDto, TabletEntriesDto } from './dto/tablet-entries.dto.ts';
import { TabletPhotoDto } from './dto/tablet-photo.dto.ts';
import { PinSignIns } from './pin-sign-in.service.ts';
import { type TabletDay, TabletDays } from './tablet-day.service.ts';
import { TabletIntake } from './tablet-intake.service.ts';
import { TabletPhotos } from './tablet-photos.service.ts';
import { TabletsRepository } from './tablets.repository.ts';
import { keepTabletCookie } from './tablet-cookie.ts';

/** Who is signed in on the tablet by PIN. */
export interface TabletPersonNow {
  staffId: string;
  role: Role;
  signIn: string;
}

/** What an enrolled tablet asks and sends, by its own token. */
@Controller('api/v1/tablet')
@TabletOnly()
@WithoutKey()
export class TabletApiController {
  constructor(
    private readonly days: TabletDays,
    private readonly intake: TabletIntake,
    private readonly photos: TabletPhotos,
    private readonly signIns: PinSignIns,
    private readonly sessions: Sessions,
    private readonly tablets: TabletsRepository,
  ) {}

  /** The day's cards with their figures, who works here, what has arrived; and who is signed in. */
  @Get('day')
  async day(
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<TabletDay & { who: TabletPersonNow | null }> {
    const tablet = currentTablet(request);
    keepTabletCookie(request, reply);
    return { ...(await this.days.of(tablet)), who: await this.whoNow(request) };
  }

  /** Takes what waited on the tablet, in its order, each once; the answer says of each what became of it. */
  @Post('actions')
  @HttpCode(200)
  @ApiBody({ type: TabletEntriesDto })
  async take(@Body() body: object, @Req() request: FastifyRequest): Promise<TabletAnswersDto> {
    return { answers: await this.intake.take(currentTablet(request), body) };
  }

  /** Keeps a photo from the tablet's outbox: the body is the picture itself. Once by its id, as every photo. */
  @Put('jobs/:id/photos/:photo')
  @TakesPictures()
  @ApiConsumes('image/jpeg')
  @ApiBody({ schema: { type: 'string', format: 'binary' } })
  async keepPhoto(
    @Param('id', IdPipe) jobId: string,
    @Param('photo', IdPipe) id: string,
    @Query() about: TabletPhotoDto,
    @Req() request: FastifyRequest,
  ): Promise<{ id: string }> {
    const tablet = currentTablet(request);
    await this.photos.keep(tablet, await pictureBody(request.raw), { jobId, id, about });
    return { id };
  }

  /** Signs a person in by PIN: the answer carries their session's cookie, and names the sign-in for what they do from now on. */
  @Post('sign-in')
  @HttpCode(200)
  async signIn(
    @Body() input: PinSignInDto,
    @Req() request: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<{ signIn: string }> {
    const { token, signInId } = await this.signIns.signIn(currentTablet(request), input);
    reply.setCookie(SESSION_COOKIE, token, ownCookie(request));
    return { signIn: signInId };
  }

  /** The person's session on this tablet ends; what waits to be sent is the tablet's, and stays. */
  @Post('lock')
  @HttpCode(204)
  async lock(@Req() request: FastifyRequest, @Res({ passthrough: true }) reply: FastifyReply): Promise<void> {
    await this.sessions.close(request.cookies[SESSION_COOKIE] ?? '');
    reply.clearCookie(SESSION_COOKIE, ownCookie(request));
  }

  private async whoNow(request: FastifyRequest): Promise<TabletPersonNow | null> {
    const staff = requestState(request)?.session?.staff;
    const signIn = staff && (await this.tablets.signInOf(staff.tokenHash, currentTablet(request).id));
    return staff && signIn ? { staffId: staff.staffId, role: staff.role, signIn } : null;
  }
}
