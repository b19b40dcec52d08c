import { Injectable } from '@nestjs/common';
import type { Device } from '../../platform/access/devices.ts';
import { PhotoIntake } from '../photos/photo-intake.service.ts';
import type { TabletPhotoDto } from './dto/tablet-photo.dto.ts';
import { noSuchPerson } from './tablets.errors.ts';
import { TabletsRepository } from './tablets.repository.ts';

/** Photos from a tablet's outbox: once each by their own id, theirs whom a sign-in on that tablet proves, else said to be theirs. */
@Injectable()
export class TabletPhotos {
  constructor(
    private readonly intake: PhotoIntake,
    private readonly tablets: TabletsRepository,
  ) {}

  async keep(tablet: Device, sent: Buffer, { jobId, id, about }: { jobId: string; id: string; about: TabletPhotoDto }): Promise<void> {
    const { by, signIn, step = '', words = '', takenAt } = about;
    const isKnown = (await this.tablets.people()).some((person) => person.id === by);
    if (!isKnown) throw noSuchPerson();
    const proofs = await this.tablets.signIns(tablet.id, signIn === undefined ? [] : [signIn]);
    const byProof = signIn !== undefined && proofs.get(signIn) === by ? 'session' : 'picked-offline';
    const at = new Date(takenAt ?? '');
    await this.intake.keep(sent, {
      ...{ id, jobId, byId: by, step, words, byProof, deviceId: tablet.id },
      ...(Number.isNaN(at.getTime()) ? {} : { takenAt: at }),
    });
  }
}
