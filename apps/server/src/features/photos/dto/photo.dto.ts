/** A photo of a job; the picture itself is at /photos/{id}. */
export class PhotoDto {
  id!: string;

  /** The step or phase of the card; empty where it belongs to none. */
  step!: string;
  words!: string;

  /** As it is kept, in pixels. */
  widthPx!: number;

  /** As it is kept, in pixels. */
  heightPx!: number;

  /** By the camera's clock, else as its sender said; null where neither is known. */
  takenAt!: string | null;
  receivedAt!: string;
  by!: string;
}

export class KeptPhotoDto {
  id!: string;
}
