import { Transform } from 'class-transformer';
import { IsIn, IsOptional, IsString, Matches, MaxLength } from 'class-validator';
import { Ticked } from '../../../platform/ticked.decorator.ts';
import { trimmed } from '../../../platform/trimmed.ts';

export class ReadingDto {
  @Matches(/^[A-Za-z]{1,60}$/, { message: 'Choose what was read.' })
  feature!: string;

  @IsIn(['removed-part', 'recess'], { message: 'Say whether it was read on the removed part or in the engine.' })
  place: 'removed-part' | 'recess' = 'removed-part';

  /** A figure in the feature's unit, or the key of a kind. */
  @Transform(trimmed)
  @IsString()
  @MaxLength(60, { message: 'Shorten the reading to 60 letters.' })
  value = '';

  @IsOptional()
  @Matches(/^[a-z-]{1,30}$/, { message: 'Choose the instrument.' })
  instrument?: string;

  @Ticked()
  couldNotRead?: 'on';

  @Transform(trimmed)
  @IsString()
  @MaxLength(200, { message: 'Shorten the reason to 200 letters.' })
  why = '';
}
