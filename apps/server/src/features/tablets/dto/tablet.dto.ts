import { Transform } from 'class-transformer';
import { IsString, Length } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

export class NewTabletDto {
  @Transform(trimmed)
  @IsString({ message: 'Give the tablet a name.' })
  @Length(1, 60, { message: 'Give the tablet a name of at most 60 letters, such as Bay 2.' })
  name!: string;
}

export class EnrolTabletDto {
  @Transform(trimmed)
  @IsString({ message: 'Type the code.' })
  @Length(1, 40, { message: 'Type the code as it stands at Bays, Tablets.' })
  code!: string;
}
