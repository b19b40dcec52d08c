import { IsISO8601, IsOptional, IsString, IsUUID, Matches, MaxLength } from 'class-validator';

/** Of a photo from a tablet, beside its bytes. */
export class TabletPhotoDto {
  /** Whose it is. */
  @IsUUID('all', { message: 'Name the person by their id.' })
  by!: string;

  /** The sign-in on this tablet that proves it. */
  @IsOptional()
  @IsUUID('all', { message: 'Name the sign-in by its id, or leave it out.' })
  signIn?: string;

  /** The step's key, a phase's, or "card". */
  @IsOptional()
  @Matches(/^[a-z][a-z0-9-]{0,59}$/, { message: 'Name the step, the phase, or "card".' })
  step?: string;

  /** What it shows. */
  @IsOptional()
  @IsString()
  @MaxLength(1000, { message: 'Shorten this to 1000 letters.' })
  words?: string;

  /** When it was taken, with its offset. */
  @IsOptional()
  @IsISO8601({ strict: true }, { message: 'Give the time with its offset, such as 2026-06-09T09:24:00+02:00.' })
  takenAt?: string;
}
