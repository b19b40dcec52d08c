import { Transform } from 'class-transformer';
import { ArrayMaxSize, IsArray, IsIn, IsString, IsUUID, Length, Matches, MaxLength } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';
import { typedList } from './typed-list.ts';

const PROVENANCES = ['listing', 'measured', 'photo'] as const;
export type Provenance = (typeof PROVENANCES)[number];

const MONTH = /^$|^(19|20)\d\d-(0[1-9]|1[0-2])$/;
const MONTH_WORDS = { message: 'Give year and month, such as 2017-03, or leave it empty.' };
const ENGINE_WORDS = { message: 'Type the engine code as in the catalogue, 20 letters at most.' };
const PROVENANCE_WORDS = { message: 'Say where this is from.' };

/** A catalogue says that a variant belongs to an engine. */
export class ListingDto {
  @Transform(trimmed)
  @Matches(/^[\p{L}\p{N} ./-]{1,20}$/u, ENGINE_WORDS)
  engineCode!: string;

  @Transform(trimmed)
  @Matches(MONTH, MONTH_WORDS)
  builtFrom = '';

  @Transform(trimmed)
  @Matches(MONTH, MONTH_WORDS)
  builtTo = '';

  /** Which catalogue, with its edition where it has one. */
  @Transform(trimmed)
  @IsString()
  @Length(1, 120, { message: 'Name the catalogue, so that a wrong listing can be traced.' })
  catalogue!: string;
}

/** What somebody says of one feature. */
export class StatementDto {
  @IsString()
  @MaxLength(60, { message: 'Choose the feature again.' })
  feature!: string;

  @Transform(trimmed)
  @IsString({ message: 'Give what it is.' })
  @Length(1, 60, { message: 'Give what it is.' })
  value!: string;

  @IsIn(PROVENANCES, PROVENANCE_WORDS)
  provenance!: Provenance;
}

export class PriceDto {
  @Transform(trimmed)
  @Matches(/^\d{1,7}([.,]\d{1,2})?$/, { message: 'Give the net price in figures, such as 23.40.' })
  priceNet!: string;
}

/** A part number of a supplier, the engine it is listed for and what is said of it. */
export class VariantDto extends ListingDto {
  @IsString()
  @MaxLength(60, { message: 'Choose the kind of part again.' })
  family!: string;

  @IsUUID('all', { message: 'Choose the supplier.' })
  supplierId!: string;

  @Transform(trimmed)
  @Matches(/^[\p{L}\p{N} ./+-]{1,40}$/u, { message: 'Type the part number as on the box: letters, digits and hyphens, 40 at most.' })
  partNumber!: string;

  @Transform(trimmed)
  @IsString()
  @Length(1, 120, { message: 'Say what it is, 120 letters at most.' })
  name!: string;

  @Transform(trimmed)
  @Matches(/^\d{1,7}([.,]\d{1,2})?$/, { message: 'Give the net price in figures, such as 23.40.' })
  priceNet!: string;

  @Transform(trimmed)
  @Matches(/^\d{1,7}([.,]\d{1,2})?$/, { message: 'Give the core charge in figures, or 0.' })
  coreCharge = '0';

  @IsIn(PROVENANCES, PROVENANCE_WORDS)
  provenance!: Provenance;

  /** Keys of the features, in the order of `value`. */
  @Transform(typedList)
  @IsArray()
  @ArrayMaxSize(60, { message: 'There are too many features: reload the page.' })
  @IsString({ each: true, message: 'Choose the feature again.' })
  feature: string[] = [];

  /** What each is; empty where nothing is said of it. */
  @Transform(typedList)
  @IsArray()
  @ArrayMaxSize(60, { message: 'There are too many features: reload the page.' })
  @IsString({ each: true, message: 'Give what it is.' })
  value: string[] = [];
}
