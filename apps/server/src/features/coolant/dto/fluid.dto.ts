import { IsBoolean, IsIn, IsNumber, IsOptional, IsString, MaxLength } from 'class-validator';
import { A_NUMBER } from './strength.dto.ts';

const TECHNOLOGIES = ['inorganic', 'organic', 'hybrid', 'phosphated-hybrid', 'silicated-organic'] as const;
type Technology = (typeof TECHNOLOGIES)[number];
const WHICH = { message: `Send one of ${TECHNOLOGIES.join(', ')}.` };
const YES_OR_NO = { message: 'Send true or false.' };
const A_DAY = { message: 'Send the day as year-month-day, such as "2026-03-31".' };

/** Whether one coolant may go in with another. */
export class MixingDto {
  /** What is in the car; left out where nobody knows. */
  @IsOptional()
  @IsIn(TECHNOLOGIES, WHICH)
  present?: Technology;

  @IsIn(TECHNOLOGIES, WHICH)
  added!: Technology;

  /** Left out where nobody looked it up. */
  @IsOptional()
  @IsBoolean(YES_OR_NO)
  isApprovedByVehicleMaker?: boolean;

  @IsOptional()
  @IsBoolean(YES_OR_NO)
  isFlushed?: boolean;
}

/** When a filling is due again. */
export class ServiceLifeDto {
  @IsIn(TECHNOLOGIES, WHICH)
  technology!: Technology;

  @IsString(A_DAY)
  @MaxLength(10, A_DAY)
  filledOn!: string;

  /** Odometer when it was filled, km. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  filledAtKm?: number;

  /** From the label or the schedule: beats the usual figure. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  statedMonths?: number;

  /** Distance between changes from the label or the schedule, km. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  statedKm?: number;

  /** Day to judge by; without it nothing is judged. */
  @IsOptional()
  @IsString(A_DAY)
  @MaxLength(10, A_DAY)
  today?: string;

  /** Odometer now, km. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  odometerKm?: number;
}

/** What is known of the water. */
export class WaterQualityDto {
  /** Chloride, mg/L. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  chlorideMgL?: number;

  /** Sulfate, mg/L. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  sulfateMgL?: number;

  /** As calcium carbonate. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  hardnessMgL?: number;

  /** Total dissolved solids, mg/L. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  dissolvedSolidsMgL?: number;

  /** pH at 25 °C. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  pH?: number;

  /** Bought as demineralised or distilled, container closed. */
  @IsOptional()
  @IsBoolean(YES_OR_NO)
  isDemineralised?: boolean;
}
