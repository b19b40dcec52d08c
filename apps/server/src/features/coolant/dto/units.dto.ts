import { IsIn, IsOptional, IsString, MaxLength } from 'class-validator';

/** How a person wants figures shown and typed. */
export class UnitsDto {
  @IsIn(['C', 'F'], { message: 'Choose °C or °F.' })
  temperature!: 'C' | 'F';

  @IsIn(['L', 'qt'], { message: 'Choose litres or US quarts.' })
  volume!: 'L' | 'qt';

  @IsIn(['kPa', 'psi'], { message: 'Choose kPa or psi.' })
  pressure!: 'kPa' | 'psi';

  /** The page of the bench to return to. */
  @IsOptional()
  @IsString()
  @MaxLength(3000, { message: 'Go back to the bench and choose there.' })
  back?: string;
}
