import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { IsString, MaxLength } from 'class-validator';
import { checkVin, type VinCheck } from '#libs/vin';
import { AnyStaff, ChangesNothing } from '../../platform/access/access.decorator.ts';

export class VinCheckDto {
  /**
   * A vehicle identification number as typed.
   * @example 1G4AH59H45G118341
   */
  @IsString({ message: 'Send the VIN as text.' })
  @MaxLength(100, { message: 'A VIN has 17 signs; this is longer than 100.' })
  vin!: string;
}

@Controller('api/v1/vehicles')
@AnyStaff()
export class VehiclesApiController {
  /** Checks the form of a VIN, its check digit where the region uses one, and the model years it can stand for. */
  @Post('vin-check')
  @ChangesNothing()
  @HttpCode(200)
  check(@Body() { vin }: VinCheckDto): VinCheck {
    return checkVin(vin);
  }
}
