import { Module } from '@nestjs/common';
import { PhotoIntake } from './photo-intake.service.ts';
import { PhotosApiController } from './photos-api.controller.ts';
import { PhotosController } from './photos.controller.ts';
import { PhotosRepository } from './photos.repository.ts';
import { Photos } from './photos.service.ts';

@Module({
  controllers: [PhotosController, PhotosApiController],
  providers: [Photos, PhotosRepository, PhotoIntake],
  exports: [Photos, PhotoIntake],
})
export class PhotosModule {}
