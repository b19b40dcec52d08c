import { IsBoolean, IsIn, IsNumber, IsOptional } from 'class-validator';
import { OptionalPart } from '../../../platform/part.decorator.ts';

export const A_NUMBER = { message: 'Send a number.' };
export const GLYCOLS = ['ethylene', 'propylene'] as const;
const WHICH_GLYCOL = { message: 'glycol: send "ethylene" or "propylene".' };

/** A strength of pure glycol, given in exactly one way. */
export class StrengthDto {
  /** Volume % of pure glycol; of a mixture, the volume column of the ASHRAE table. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  volumePercent?: number;

  /** Mass % of pure glycol. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  massPercent?: number;

  /** Freezing point in °C, on the dilute branch. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  freezingPointC?: number;
}

export class OfGlycolDto extends StrengthDto {
  @IsIn(GLYCOLS, WHICH_GLYCOL)
  glycol!: 'ethylene' | 'propylene';
}

/** The pair printed on a product: so many parts of it to so many of water freeze at …. */
export class ProductLabelDto {
  /** Parts of product. */
  @IsNumber({}, A_NUMBER)
  partsProduct!: number;

  /** Parts of water. */
  @IsNumber({}, A_NUMBER)
  partsWater!: number;

  /** What they freeze at, °C. */
  @IsNumber({}, A_NUMBER)
  freezingPointC!: number;
}

/** What is poured in: concentrate or ready-mixed, by its content or by its label. */
export class AdditiveDto extends StrengthDto {
  @OptionalPart(() => ProductLabelDto)
  label?: ProductLabelDto;

  /** Concentrate of unknown content: the pessimistic fallback is used and said. */
  @IsOptional()
  @IsBoolean({ message: 'Send true or false.' })
  isContentUnknown?: boolean;

  /** A fluid sold as waterless is refused with the reason. */
  @IsOptional()
  @IsBoolean({ message: 'Send true or false.' })
  isWaterless?: boolean;
}

/** What the mixture shall be. */
export class TargetDto extends StrengthDto {
  /** Volume % of product: 50 is half concentrate, half water, measured apart. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  productPercent?: number;

  /** Coldest air expected, °C. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  coldestAirC?: number;

  /** Margin below the coldest air, K; 5 where left out. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  marginK?: number;
}
