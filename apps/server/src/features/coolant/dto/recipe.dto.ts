import { IsBoolean, IsIn, IsNumber, IsOptional } from 'class-validator';
import { OptionalPart, Part } from '../../../platform/part.decorator.ts';
import { A_NUMBER, AdditiveDto, GLYCOLS, StrengthDto, TargetDto } from './strength.dto.ts';

/** Volume % of product. */
export class ProductLimitsDto {
  /** Least product, volume %. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  minimumPercent?: number;

  /** Most product, volume %. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  maximumPercent?: number;
}

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
  @OptionalPart(() => StrengthDto)
  residual?: StrengthDto;

  @Part(() => AdditiveDto, 'Send what is poured in, such as { "volumePercent": 100 }.')
  additive!: AdditiveDto;

  @Part(() => TargetDto, 'Send what the mixture shall be, such as { "volumePercent": 45 }.')
  target!: TargetDto;

  /** The strength of what stays in was not read but assumed: said in the answer. */
  @IsOptional()
  @IsBoolean({ message: 'Send true or false.' })
  isResidualAssumed?: boolean;

  /** What the system volume means: the dry system, or the usual refill after draining. */
  @IsOptional()
  @IsIn(['dry-fill', 'service-refill'], { message: 'Send "dry-fill" or "service-refill".' })
  capacityKind?: 'dry-fill' | 'service-refill';

  /** Size of the jug at hand, L. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  jugL?: number;

  /** Distance of the jug's marks, mL. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  markMl?: number;

  /** The product's own limits, volume % of product, from its label. */
  @OptionalPart(() => ProductLimitsDto)
  limits?: ProductLimitsDto;
}

export class RecipeAfterFlushDto extends RecipeDto {
  /** Drain-and-fill cycles with water, each run hot with the heater on. */
  @IsNumber({}, A_NUMBER)
  cycles!: number;

  /** Strength before the flush. */
  @OptionalPart(() => StrengthDto)
  present?: StrengthDto;
}
