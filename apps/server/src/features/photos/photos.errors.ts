import { DomainError } from '../../platform/domain-error.ts';

/** Where a refusal of the picture itself is shown. */
const PHOTO_FIELD = 'photo';

const refused = (kind: 'malformed' | 'impossible' | 'too-large', code: string, message: string): DomainError =>
  new DomainError(kind, code, message, { errors: [{ field: PHOTO_FIELD, message }] });

/** The bytes are no picture of a kind we take, whatever the file is called. */
export const noPicture = (found: string): DomainError =>
  refused('malformed', 'no-picture', `This is ${found}, not a picture: send a JPEG, PNG or WebP from the camera.`);

/** It begins like a picture and can't be decoded to its end. */
export const brokenPicture = (): DomainError =>
  refused('malformed', 'broken-picture', 'This picture can’t be read to its end: take it again, or send the original file.');

/** Small as a file, but it would unfold to more than a camera makes. */
export const tooManyPixels = (most: number): DomainError =>
  refused('impossible', 'too-many-pixels', `This picture has more than ${most} million pixels: set the camera to a smaller size.`);

/** More bytes than a photo of ours has. */
export const pictureTooLarge = (mostMb: number): DomainError =>
  refused(
    'too-large',
    'picture-too-large',
    `A photo may have ${mostMb} MB at most: set the camera to a smaller size, or send one photo at a time.`,
  );

/** No file came with the form or the call. */
export const pictureMissing = (): DomainError => refused('malformed', 'picture-missing', 'Choose a photo, or take one, first.');

/** Another picture is on record under this id. */
export const photoIdTaken = (): DomainError =>
  new DomainError('conflict', 'photo-id-taken', 'Another photo is on record under this id: give each photo an id of its own.');

/** No photo has this address. */
export const noPhoto = (): DomainError => new DomainError('not-found', 'no-photo', 'This photo is not on record.');

/** The job that the photo is to be kept with is not on record. */
export const noJobForPhoto = (): DomainError => new DomainError('not-found', 'no-such-job', 'The job of this photo is not on record.');

/** So many pictures are being worked on that this one would wait too long. */
export const tooManyPhotos = (): DomainError =>
  new DomainError(
    'too-often',
    'photos-busy',
    'Many photos are arriving at once: this one is sent again by itself, or send it again in a minute.',
  );
