import { IsBoolean, IsIn, IsNumber, IsOptional } from 'class-validator';
import { A_NUMBER, GLYCOLS } from './strength.dto.ts';

const WHICH_GLYCOL = { message: 'Send "ethylene" or "propylene".' };

export class RefractometerDto {
  /** What is in the system. */
  @IsIn(GLYCOLS, WHICH_GLYCOL)
  glycol!: 'ethylene' | 'propylene';

  /** Which glycol the instrument's °C scale is made for. */
  @IsOptional()
  @IsIn(GLYCOLS, WHICH_GLYCOL)
  scaleGlycol?: 'ethylene' | 'propylene';

  /** nD at 20 °C. Give exactly one of the three readings. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  refractiveIndex?: number;

  /** As read on the °C scale. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  freezingPointC?: number;

  /** As read on a Brix scale. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  brix?: number;

  /** Temperature of the sample, °C. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  sampleC?: number;

  /** The instrument corrects for temperature by itself. */
  @IsOptional()
  @IsBoolean({ message: 'Send true or false.' })
  hasTemperatureCompensation?: boolean;
}

export class HydrometerDto {
  @IsIn(GLYCOLS, WHICH_GLYCOL)
  glycol!: 'ethylene' | 'propylene';

  /** As read: density over that of water. */
  @IsNumber({}, A_NUMBER)
  specificGravity!: number;

  /** Temperature of the sample, °C; 20 where left out. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  sampleC?: number;
}
