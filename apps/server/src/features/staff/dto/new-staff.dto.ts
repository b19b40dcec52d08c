import { Transform } from 'class-transformer';
import { IsIn, IsString, Length, Matches } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

export class NewStaffDto {
  @Transform(trimmed)
  @IsString()
  @Length(1, 80, { message: 'Type the person’s name, 80 letters at most.' })
  displayName!: string;

  @Transform(trimmed)
  @Matches(/^[\p{L}\p{N}._-]{2,40}$/u, { message: 'Choose 2 to 40 letters or digits without spaces.' })
  name!: string;

  @IsIn(['desk', 'technician', 'owner'], { message: 'Choose what the person does here.' })
  role!: 'desk' | 'technician' | 'owner';

  @IsString()
  @Length(12, 200, { message: 'Give a secret of at least 12 letters: three or four words are easy to keep.' })
  secret!: string;
}
