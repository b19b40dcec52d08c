import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import {
  compareStrength,
  type FillAccount,
  fillAccount,
  type JugPlan,
  jugPlan,
  mixingAdvice,
  type MixingAdvice,
  serviceLife,
  type ServiceLife,
  type StrengthComparison,
  waterQuality,
  type WaterQuality,
} from '#libs/coolant';
import { AnyStaff, ChangesNothing } from '../../platform/access/access.decorator.ts';
import { resultOf } from './coolant-outcome.ts';
import { CompareStrengthDto, FillAccountDto, JugPlanDto } from './dto/fill.dto.ts';
import { MixingDto, ServiceLifeDto, WaterQualityDto } from './dto/fluid.dto.ts';

/** What a filling needs beside its strength: jugs, the account, the coolant's kind and life, the water. */
@Controller('api/v1/coolant')
@AnyStaff()
@ChangesNothing()
export class CoolantJobApiController {
  /** Amounts in jugs, exact and in whole marks, with the strength that each truly gives. */
  @Post('jugs')
  @HttpCode(200)
  jugs(@Body() input: JugPlanDto): JugPlan {
    return resultOf(jugPlan(input));
  }

  /** What came out against what went in, with the tolerances it is judged by. */
  @Post('fill-account')
  @HttpCode(200)
  fillAccount(@Body() input: FillAccountDto): FillAccount {
    return resultOf(fillAccount(input));
  }

  /** The strength that was reckoned beside the one that was read. */
  @Post('compare-strength')
  @HttpCode(200)
  compareStrength(@Body() input: CompareStrengthDto): StrengthComparison {
    return resultOf(compareStrength(input));
  }

  /** Whether a coolant may go in with what is there. */
  @Post('technology')
  @HttpCode(200)
  technology(@Body() input: MixingDto): MixingAdvice {
    return mixingAdvice(input);
  }

  /** When the coolant is due, by time and distance. */
  @Post('service-life')
  @HttpCode(200)
  serviceLife(@Body() input: ServiceLifeDto): ServiceLife {
    return resultOf(serviceLife(input));
  }

  /** Whether this water will do for mixing. */
  @Post('water-quality')
  @HttpCode(200)
  waterQuality(@Body() input: WaterQualityDto): WaterQuality {
    return resultOf(waterQuality(input));
  }
}
