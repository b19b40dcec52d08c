import { Transform } from 'class-transformer';
import { IsIn, IsString, MaxLength } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';

export class EndDebtDto {
  @IsIn(['done', 'let-go'], { message: 'Say whether it is done or let go.' })
  ending!: 'done' | 'let-go';

  @Transform(trimmed)
  @IsString()
  @MaxLength(300, { message: 'Shorten the reason to 300 letters.' })
  why = '';
}
