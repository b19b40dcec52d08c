import { Transform } from 'class-transformer';
import { IsIn, IsOptional, IsString, Length, Matches, MaxLength } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';
import { FACT_KEYS, type FactKey } from '../job/fact-keys.ts';

/** A figure or a word about a car's cooling system, with where it comes from. Only the field that belongs to `key` counts. */
export class VehicleFactDto {
  @IsIn(FACT_KEYS, { message: 'Say what this is about.' })
  key!: FactKey;

  @Transform(trimmed)
  @IsString()
  @MaxLength(20, { message: 'That is too long for a figure: 20 signs at most.' })
  figure = '';

  /** Units the figure was typed in, such as C-L-kPa. */
  @IsOptional()
  @Matches(/^[CF]-(L|qt)-(kPa|psi)$/, { message: 'Reload the page and type it again.' })
  in?: string;

  @IsOptional()
  @IsIn(['dry fill', 'service refill'], { message: 'Say whether this is the dry system or the usual refill.' })
  capacityKind?: 'dry fill' | 'service refill';

  @IsOptional()
  @IsIn(['ethylene', 'propylene'], { message: 'Choose the glycol from the list.' })
  factGlycol?: 'ethylene' | 'propylene';

  @IsOptional()
  @IsIn(['inorganic', 'organic', 'hybrid', 'phosphated-hybrid', 'silicated-organic'], { message: 'Choose the technology from the list.' })
  technology?: string;

  @Matches(/^$|^\d{4}-\d\d-\d\d$/, { message: 'Give the day as year-month-day, such as 2026-03-31.' })
  changedOn = '';

  @Transform(trimmed)
  @IsString({ message: 'Say where this comes from.' })
  @Length(1, 200, { message: 'Say where this comes from: handbook and page, label, own reading. 200 letters at most.' })
  source!: string;
}

/** Why a statement about the car no longer stands. */
export class WithdrawFactDto {
  @Transform(trimmed)
  @IsString({ message: 'Say why it no longer stands.' })
  @Length(1, 200, { message: 'Say why it no longer stands, in 200 letters at most.' })
  why!: string;
}
