import { IsBoolean, IsIn, IsNumber, IsOptional } from 'class-validator';
import { OptionalPart, Part } from '../../../platform/part.decorator.ts';
import { A_NUMBER, AdditiveDto, GLYCOLS, StrengthDto } from './strength.dto.ts';

const WHICH_GLYCOL = { message: 'glycol: send "ethylene" or "propylene".' };
const A_STRENGTH = 'Send a strength, such as { "volumePercent": 45 }.';

/** A volume; `isAbout` where it was judged by eye. */
export class CardVolumeDto {
  /** L. */
  @IsNumber({}, A_NUMBER)
  volumeL!: number;

  @IsOptional()
  @IsBoolean({ message: 'Send true or false.' })
  isAbout?: boolean;
}

/** What came out. */
export class DrainedDto extends CardVolumeDto {
  /** Of it kept clean for this car, L. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  keptL?: number;
}

/** What went in at one stage. */
export class PouredDto extends DrainedDto {
  /** Of it the product, before it was mixed, L. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  productL?: number;
}

export class TolerancesDto {
  /** So much less may have gone in than came out, L. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  shortfallL?: number;

  /** So much may be topped up next morning, L. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  morningL?: number;

  /** Each figure marked 'about' widens the tolerance by so much, L. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  aboutL?: number;
}

/** What came out against what went in; what isn't known yet is left out. */
export class FillAccountDto {
  /** What the whole system holds, L. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  systemVolumeL?: number;

  @OptionalPart(() => CardVolumeDto)
  missingOnArrival?: CardVolumeDto;

  @OptionalPart(() => DrainedDto)
  drained?: DrainedDto;

  @OptionalPart(() => PouredDto)
  firstFill?: PouredDto;

  @OptionalPart(() => PouredDto)
  afterShortRun?: PouredDto;

  @OptionalPart(() => PouredDto)
  afterRunHot?: PouredDto;

  @OptionalPart(() => PouredDto)
  nextMorning?: PouredDto;

  /** What additive and water shrink by on mixing: the recipe's figure, L. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  shrinkL?: number;

  @OptionalPart(() => TolerancesDto)
  tolerances?: TolerancesDto;
}

/** The computed strength and the one read after the run. */
export class CompareStrengthDto {
  @IsIn(GLYCOLS, WHICH_GLYCOL)
  glycol!: 'ethylene' | 'propylene';

  @Part(() => StrengthDto, A_STRENGTH)
  computed!: StrengthDto;

  @Part(() => StrengthDto, A_STRENGTH)
  measured!: StrengthDto;

  /** So many volume % apart still agree; 3 where left out. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  toleranceVolumePercent?: number;
}

/** Amounts to share out over jugs. */
export class JugPlanDto {
  @IsIn(GLYCOLS, WHICH_GLYCOL)
  glycol!: 'ethylene' | 'propylene';

  @Part(() => AdditiveDto, 'Send what is poured in, such as { "volumePercent": 100 }.')
  additive!: AdditiveDto;

  /** What is poured in of the product, L. */
  @IsNumber({}, A_NUMBER)
  additiveL!: number;

  /** What is poured in of water, L. */
  @IsNumber({}, A_NUMBER)
  waterL!: number;

  /** Size of the jug at hand, L. */
  @IsNumber({}, A_NUMBER)
  jugL!: number;

  /** Distance of the jug's marks, mL; 50 where left out. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  markMl?: number;
}
