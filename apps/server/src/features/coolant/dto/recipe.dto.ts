import { Type } from 'class-transformer';
import { IsIn, IsNumber, IsObject, IsOptional, ValidateNested } from 'class-validator';
import { A_NUMBER, AdditiveDto, GLYCOLS, StrengthDto, TargetDto } from './strength.dto.ts';

export class RecipeDto {
  @IsIn(GLYCOLS, { message: 'glycol: send "ethylene" or "propylene".' })
  glycol!: 'ethylene' | 'propylene';

  /** What the whole system holds, L. */
  @IsNumber({}, A_NUMBER)
  systemVolumeL!: number;

  /** The space to fill: drained plus missing on arrival, L. Left out: the system is empty. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  drainedVolumeL?: number;

  /** Strength of what stays in. */
  @IsOptional()
  @ValidateNested()
  @Type(() => StrengthDto)
  residual?: StrengthDto;

  @IsObject({ message: 'Send what is poured in, such as { "volumePercent": 100 }.' })
  @ValidateNested()
  @Type(() => AdditiveDto)
  additive!: AdditiveDto;

  @IsObject({ message: 'Send what the mixture shall be, such as { "volumePercent": 45 }.' })
  @ValidateNested()
  @Type(() => TargetDto)
  target!: TargetDto;

  /** Size of the jug at hand, L. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  jugL?: number;

  /** Distance of the jug's marks, mL. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  markMl?: number;
}

export class RecipeAfterFlushDto extends RecipeDto {
  /** Drain-and-fill cycles with water, each run hot with the heater on. */
  @IsNumber({}, A_NUMBER)
  cycles!: number;

  /** Strength before the flush. */
  @IsOptional()
  @ValidateNested()
  @Type(() => StrengthDto)
  present?: StrengthDto;
}
