import { IsString, MaxLength } from 'class-validator';

export class VinCheckDto {
  /**
   * A vehicle identification number as typed.
   * @example 1G4AH59H45G118341
   */
  @IsString({ message: 'Send the VIN as text.' })
  @MaxLength(100, { message: 'A VIN has 17 signs; this is longer than 100.' })
  vin!: string;
}
