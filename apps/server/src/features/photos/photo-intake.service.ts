import { Injectable } from '@nestjs/common';
import { PrismaService } from '../../platform/database.ts';
import { Photos, type PhotoAbout } from './photos.service.ts';

/** A photo by itself, as a tablet or a program sends it: exactly once by its own id. */
@Injectable()
export class PhotoIntake {
  constructor(
    private readonly prisma: PrismaService,
    private readonly photos: Photos,
  ) {}

  async keep(sent: Buffer, about: PhotoAbout): Promise<void> {
    const picture = await this.photos.develop(sent);
    await this.prisma.db.$transaction((tx) => this.photos.keepIn(tx, picture, about));
  }
}
