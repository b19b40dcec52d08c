import { Controller, Get, Headers, HttpCode, Param, Put, Req } from '@nestjs/common';
import { ApiBody, ApiConsumes } from '@nestjs/swagger';
import type { FastifyRequest } from 'fastify';
import { AnyStaff, WithoutKey } from '../../platform/access/access.decorator.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { currentStaff } from '../../platform/request-context.ts';
import { TakesPictures } from '../../platform/uploads/takes-pictures.decorator.ts';
import type { KeptPhotoDto, PhotoDto } from './dto/photo.dto.ts';
import { PhotoIntake } from './photo-intake.service.ts';
import { pictureBody } from './picture-body.ts';
import { Photos } from './photos.service.ts';

@Controller('api/v1/job-cards')
@AnyStaff()
export class PhotosApiController {
  constructor(
    private readonly photos: Photos,
    private readonly intake: PhotoIntake,
  ) {}

  /** The photos of a job in the order in which they came. */
  @Get(':id/photos')
  async list(@Param('id', IdPipe) id: string): Promise<PhotoDto[]> {
    const photos = await this.photos.ofJob(id);
    return photos.map(({ id: photo, step, words, widthPx, heightPx, takenAt, receivedAt, byId }) => ({
      ...{ id: photo, step, words, widthPx, heightPx, by: byId },
      takenAt: takenAt?.toISOString() ?? null,
      receivedAt: receivedAt.toISOString(),
    }));
  }

  /**
   * Keeps a photo under an id of its sender's, a UUID: the body is the picture itself (JPEG, PNG or WebP, at most 12 MB). The same
   * picture under the same id is kept once, so that the call may be repeated; another one under it is refused. An action of the card
   * (`photo`, `finding`) names it by this id.
   */
  @Put(':id/photos/:photo')
  @WithoutKey()
  @TakesPictures()
  @HttpCode(200)
  @ApiConsumes('image/jpeg', 'image/png', 'image/webp')
  @ApiBody({ schema: { type: 'string', format: 'binary' } })
  async keep(
    @Param('id', IdPipe) jobId: string,
    @Param('photo', IdPipe) id: string,
    @Headers('x-taken-at') takenAt: string | undefined,
    @Req() request: FastifyRequest,
  ): Promise<KeptPhotoDto> {
    const sent = await pictureBody(request.raw);
    await this.intake.keep(sent, { id, jobId, byId: currentStaff().staffId, ...takenAtOf(takenAt) });
    return { id };
  }
}

/** A header that is no time of ours says nothing. */
function takenAtOf(header: string | undefined): { takenAt?: Date } {
  const at = new Date(header ?? '');
  const year = at.getUTCFullYear();
  return year >= 1970 && year < 2200 ? { takenAt: at } : {};
}
