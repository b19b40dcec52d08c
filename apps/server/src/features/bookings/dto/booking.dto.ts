import { Transform } from 'class-transformer';
import { IsOptional, IsUUID, Matches } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

export class BookingDto {
  @IsUUID(undefined, { message: 'Choose a place.' })
  placeId!: string;

  @Matches(/^\d{4}-\d{2}-\d{2}$/, { message: 'Choose the day.' })
  day!: string;

  @Matches(/^([01]\d|2[0-3]):[0-5]\d$/, { message: 'Give the start as hours and minutes, such as 09:30.' })
  from!: string;

  /** Minutes. */
  @Transform(trimmed)
  @Matches(/^(?:[1-9]\d?|[1-9]\d\d|1[0-3]\d\d|14[0-3]\d|1440)$/, { message: 'Give the length in minutes, 1 to 1440.' })
  minutes!: string;

  @IsOptional()
  @Transform(({ value }: { value: unknown }) => (value === '' ? undefined : value))
  @Matches(/^[0-9a-f-]{36}$/, { message: 'Choose whose hands it needs, or nobody.' })
  staffId?: string;

  @Matches(/^[a-z-]{1,60}$/, { message: 'Choose which part of the job this is.' })
  phase!: string;
}
