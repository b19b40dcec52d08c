import { IsNumber } from 'class-validator';

export const A_NUMBER = { message: 'Send a number.' };

/** A measured figure against its stated one; all four in one unit. */
export class ConformanceDto {
  /** The stated figure. */
  @IsNumber({}, A_NUMBER)
  nominal!: number;

  /** The largest deviation either way that still counts as the stated figure. */
  @IsNumber({}, A_NUMBER)
  tolerance!: number;

  /** The figure as read. */
  @IsNumber({}, A_NUMBER)
  measured!: number;

  /** u = U/2 of the instrument; 0 where the figure is read exactly. */
  @IsNumber({}, A_NUMBER)
  standardUncertainty!: number;
}
