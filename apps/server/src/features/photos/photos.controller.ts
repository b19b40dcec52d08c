import { Controller, Get, Param, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { AnyStaff } from '../../platform/access/access.decorator.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { Photos } from './photos.service.ts';
import { sendPhoto } from './send-photo.ts';

/** The pictures themselves, for whoever is signed in. */
@ApiExcludeController()
@Controller('photos')
@AnyStaff()
export class PhotosController {
  constructor(private readonly photos: Photos) {}

  @Get(':id')
  async whole(@Param('id', IdPipe) id: string, @Res() reply: FastifyReply): Promise<void> {
    await sendPhoto(reply, id, await this.photos.picture(id, 'whole'));
  }

  @Get(':id/small')
  async small(@Param('id', IdPipe) id: string, @Res() reply: FastifyReply): Promise<void> {
    await sendPhoto(reply, id, await this.photos.picture(id, 'small'));
  }
}
