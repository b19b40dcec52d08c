import { Injectable } from '@nestjs/common';
import type { Tx } from '#libs/db';
import { Audit } from '../../platform/audit.ts';
import { Clock } from '../../platform/clock.ts';
import { TaskQueue } from '../../platform/task-queue.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { instantAt } from '../../web/dates.ts';
import type { CameraTime } from './develop/camera-time.ts';
import { developPicture, type DevelopedPicture } from './develop/develop-picture.ts';
import { noJobForPhoto, noPhoto, photoIdTaken, tooManyPhotos } from './photos.errors.ts';
import { type PhotoRow, PhotosRepository } from './photos.repository.ts';

export { MOST_SENT_BYTES } from './develop/develop-picture.ts';

/** Whose photo of what it is. */
export interface PhotoAbout {
  /** Of its own: the same picture under the same id is kept once, however often it is sent. */
  id: string;
  jobId: string;
  byId: string;
  /** The step or phase of the card, or 'card'. */
  step?: string;
  readingId?: string;
  words?: string;
  byProof?: 'session' | 'picked-offline';
  deviceId?: string;
  /** As the sender says; the camera's own time in the picture goes before it. */
  takenAt?: Date;
}

export { pictureBody } from './picture-body.ts';

/** Pictures of a job, stored with everything else so that one backup holds them. */
@Injectable()
export class Photos {
  // Decoding is the costliest thing that a request can ask for here.
  private readonly queue = new TaskQueue({ atOnce: 2, waiting: 40 }, tooManyPhotos);

  constructor(
    private readonly photos: PhotosRepository,
    private readonly workshop: WorkshopFacts,
    private readonly audit: Audit,
    private readonly clock: Clock,
  ) {}

  /** Decodes and re-encodes: before a transaction, never inside one. */
  develop(sent: Buffer): Promise<DevelopedPicture> {
    return this.queue.run(() => developPicture(sent));
  }

  /**
   * Keeps a developed picture in the caller's transaction, once.
   *
   * @throws photo-id-taken where another picture has this id; no-such-job
   */
  async keepIn(tx: Tx, picture: DevelopedPicture, about: PhotoAbout): Promise<void> {
    const { id, jobId, byId, step = '', readingId = null, words = '', byProof = 'session', deviceId = null } = about;
    if (!(await this.photos.jobExists(jobId, tx))) throw noJobForPhoto();
    const { cameraTime, mediaType, widthPx, heightPx, sentSha256 } = picture;
    const { timeZone } = await this.workshop.get(tx);
    const isNew = await this.photos.add(tx, {
      ...{ id, jobId, byId, step, readingId, words, byProof, deviceId, mediaType, widthPx, heightPx, sentSha256 },
      bytes: new Uint8Array(picture.bytes),
      smallBytes: new Uint8Array(picture.smallBytes),
      takenAt: (cameraTime && instantOf(cameraTime, timeZone)) ?? about.takenAt ?? null,
      receivedAt: this.clock.now(),
    });
    if (isNew) {
      await this.audit.record(tx, { action: 'kept', subject: 'photo', subjectId: id, after: { jobId, byId, sentSha256 } });
      return;
    }
    const known = await this.photos.marks(id, tx);
    if (known?.jobId !== jobId || known.sentSha256 !== sentSha256) throw photoIdTaken();
  }

  /** @throws no-photo */
  async picture(id: string, size: 'whole' | 'small'): Promise<{ mediaType: string; bytes: Uint8Array }> {
    const found = await this.photos.picture(id, size);
    if (!found) throw noPhoto();
    return found;
  }

  /** @throws no-such-job */
  async ofJob(jobId: string): Promise<PhotoRow[]> {
    if (!(await this.photos.jobExists(jobId))) throw noJobForPhoto();
    return this.photos.ofJob(jobId);
  }
}

/** A camera that knows no offset stands where the workshop stands. */
function instantOf({ day, time, offset }: CameraTime, timeZone: string): Date | undefined {
  if (offset === null) return instantAt(day, time.slice(0, 5), timeZone);
  const at = new Date(`${day}T${time}${offset}`);
  return Number.isNaN(at.getTime()) || at.getUTCFullYear() < 1970 || at.getUTCFullYear() > 2199 ? undefined : at;
}
