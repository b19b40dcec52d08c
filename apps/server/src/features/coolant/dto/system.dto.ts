import { IsNumber, IsOptional } from 'class-validator';
import { A_NUMBER, OfGlycolDto } from './strength.dto.ts';

export class ReplacementDto {
  /** Any unit of volume; the answer comes in the same. */
  @IsNumber({}, A_NUMBER)
  systemVolume!: number;

  /** Strength in the system, volume %. */
  @IsNumber({}, A_NUMBER)
  presentPercent!: number;

  /** Strength of what is added, volume %. */
  @IsNumber({}, A_NUMBER)
  addedPercent!: number;

  /** Strength it shall have, volume %. */
  @IsNumber({}, A_NUMBER)
  targetPercent!: number;
}

export class FlushDto {
  /** What the whole system holds, L. */
  @IsNumber({}, A_NUMBER)
  systemVolumeL!: number;

  /** What one draining brings out, L. */
  @IsNumber({}, A_NUMBER)
  drainedVolumeL!: number;

  /** How often it is drained and filled with water; give this or maxRemainingFraction. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  cycles?: number;

  /** How much of the old coolant may be left, 0 to 1. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  maxRemainingFraction?: number;
}

export class BoilingDto extends OfGlycolDto {
  /** Height above the sea, m; 0 where left out. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  altitudeM?: number;

  /** Cap rating above the atmosphere, kPa; 0 where left out. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  capGaugeKPa?: number;

  /** What the cap held when it was tested, kPa: beats the printed rating. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  capMeasuredKPa?: number;

  /** The hottest that is expected, °C. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  hottestExpectedC?: number;
}

export class ExpansionDto extends OfGlycolDto {
  /** Coolant in the system at the first temperature, L. */
  @IsNumber({}, A_NUMBER)
  volumeL!: number;

  /** Temperature at the start, °C. */
  @IsNumber({}, A_NUMBER)
  fromC!: number;

  /** Temperature at the end, °C. */
  @IsNumber({}, A_NUMBER)
  toC!: number;

  /** Space above the cold level in the tank, L. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  tankSpaceL?: number;
}

export class HeatCarryingDto extends OfGlycolDto {
  /** Temperature at which the fluids are compared, °C. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  tempC?: number;
}
