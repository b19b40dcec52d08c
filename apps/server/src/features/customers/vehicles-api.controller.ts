import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { checkVin, type VinCheck } from '#libs/vin';
import { AnyStaff, ChangesNothing } from '../../platform/access/access.decorator.ts';
import { VinCheckDto } from './dto/vin-check.dto.ts';

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
