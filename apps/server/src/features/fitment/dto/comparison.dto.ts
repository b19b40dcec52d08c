import { Type } from 'class-transformer';
import {
  ArrayMaxSize,
  IsArray,
  IsDefined,
  IsIn,
  IsNumber,
  IsObject,
  IsOptional,
  IsString,
  MaxLength,
  ValidateIf,
  ValidateNested,
} from 'class-validator';
import type { FeatureValue } from '#libs/fitment';
import { A_NUMBER } from './conformance.dto.ts';

const KINDS = ['category', 'number'] as const;
const CRITICALITIES = ['sealing', 'function', 'advisory'] as const;
const A_KEY = { message: 'Send the key of a feature, 100 letters at most.' };

/** One way in which variants differ. */
export class ComparisonFeatureDto {
  @IsString(A_KEY)
  @MaxLength(100, A_KEY)
  key!: string;

  @IsIn(KINDS, { message: 'kind: send "category" or "number".' })
  kind!: (typeof KINDS)[number];

  /** Sealing: a mismatch excludes. Function: counts against. Advisory: only shown. */
  @IsIn(CRITICALITIES, { message: 'criticality: send "sealing", "function" or "advisory".' })
  criticality!: (typeof CRITICALITIES)[number];

  /** Numbers: how far a part may deviate from its stated figure; 0 if left out. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  tolerance?: number;

  /** Categories: how often one is taken for another. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  misreadingRate?: number;

  /** Minutes that one reading takes; 1 if left out. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  minutes?: number;

  /** Numbers: the least that such a part can have. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  low?: number;

  /** Numbers: the most that such a part can have. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  high?: number;

  /** Categories: all that there are. */
  @IsOptional()
  @IsArray({ message: 'Send a list.' })
  @ArrayMaxSize(200, { message: 'List 200 values at most.' })
  values?: FeatureValue[];

  /** Numbers: u of the best instrument in the shop, which values the next reading. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  standardUncertainty?: number;
}

/** One variant that may be the right one. */
export class ComparisonCandidateDto {
  @IsString({ message: 'Send an id.' })
  @MaxLength(200, { message: 'Shorten the id to 200 letters.' })
  id!: string;

  /** Weight before any reading, on any scale; an equal share if left out. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  prior?: number;

  /** What the variant is stated to have, by key of the feature. */
  @IsObject({ message: 'Send the stated values by key, such as { "flange": 54 }.' })
  values!: Record<string, FeatureValue | null>;
}

/** One reading on the removed part or in the recess. */
export class ComparisonReadingDto {
  @IsString(A_KEY)
  key!: string;

  /** Null: it could not be read. */
  @ValidateIf((reading: ComparisonReadingDto) => reading.value !== null)
  @IsDefined({ message: 'Send the value that was read, or null if it could not be read.' })
  value!: FeatureValue | null;

  /** u of the instrument used; 0 for what is read exactly. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  standardUncertainty?: number;

  /** Where: readings of one place are of one object. */
  @IsOptional()
  @IsString({ message: 'Send the place as text.' })
  @MaxLength(100, { message: 'Shorten the place to 100 letters.' })
  measuredAt?: string;
}

export class ComparisonDto {
  @IsArray({ message: 'Send a list of features.' })
  @ArrayMaxSize(100, { message: 'Send 100 features at most.' })
  @ValidateNested({ each: true, message: 'Send each feature as an object.' })
  @Type(() => ComparisonFeatureDto)
  features!: ComparisonFeatureDto[];

  /** Probability before any reading that none of the candidates is right; 0.05 if left out. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  nonePrior?: number;

  /** Probability at which the choice is made; 0.95 if left out. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  threshold?: number;

  @IsArray({ message: 'Send a list of candidates.' })
  @ArrayMaxSize(100, { message: 'Send 100 candidates at most.' })
  @ValidateNested({ each: true, message: 'Send each candidate as an object.' })
  @Type(() => ComparisonCandidateDto)
  candidates!: ComparisonCandidateDto[];

  @IsArray({ message: 'Send a list of readings; it may be empty.' })
  @ArrayMaxSize(500, { message: 'Send 500 readings at most.' })
  @ValidateNested({ each: true, message: 'Send each reading as an object.' })
  @Type(() => ComparisonReadingDto)
  readings!: ComparisonReadingDto[];
}
