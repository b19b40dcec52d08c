import { Type } from 'class-transformer';
import { IsBoolean, IsIn, IsNumber, IsObject, IsOptional, ValidateNested } from 'class-validator';
import { A_NUMBER, AdditiveDto, GLYCOLS, StrengthDto } from './strength.dto.ts';

const WHICH_GLYCOL = { message: 'glycol: send "ethylene" or "propylene".' };
const A_STRENGTH = { message: 'Send a strength, such as { "volumePercent": 45 }.' };

/** A volume; `isAbout` where it was judged by eye. */
export class CardVolumeDto {
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
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  productL?: number;
}

export class TolerancesDto {
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  shortfallL?: number;

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
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  systemVolumeL?: number;

  @IsOptional()
  @ValidateNested()
  @Type(() => CardVolumeDto)
  missingOnArrival?: CardVolumeDto;

  @IsOptional()
  @ValidateNested()
  @Type(() => DrainedDto)
  drained?: DrainedDto;

  @IsOptional()
  @ValidateNested()
  @Type(() => PouredDto)
  firstFill?: PouredDto;

  @IsOptional()
  @ValidateNested()
  @Type(() => PouredDto)
  afterShortRun?: PouredDto;

  @IsOptional()
  @ValidateNested()
  @Type(() => PouredDto)
  afterRunHot?: PouredDto;

  @IsOptional()
  @ValidateNested()
  @Type(() => PouredDto)
  nextMorning?: PouredDto;

  /** What additive and water shrink by on mixing: the recipe's figure, L. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  shrinkL?: number;

  @IsOptional()
  @ValidateNested()
  @Type(() => TolerancesDto)
  tolerances?: TolerancesDto;
}

/** The computed strength and the one read after the run. */
export class CompareStrengthDto {
  @IsIn(GLYCOLS, WHICH_GLYCOL)
  glycol!: 'ethylene' | 'propylene';

  @IsObject(A_STRENGTH)
  @ValidateNested()
  @Type(() => StrengthDto)
  computed!: StrengthDto;

  @IsObject(A_STRENGTH)
  @ValidateNested()
  @Type(() => StrengthDto)
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

  @IsObject({ message: 'Send what is poured in, such as { "volumePercent": 100 }.' })
  @ValidateNested()
  @Type(() => AdditiveDto)
  additive!: AdditiveDto;

  @IsNumber({}, A_NUMBER)
  additiveL!: number;

  @IsNumber({}, A_NUMBER)
  waterL!: number;

  @IsNumber({}, A_NUMBER)
  jugL!: number;

  /** Distance of the jug's marks, mL; 50 where left out. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  markMl?: number;
}
