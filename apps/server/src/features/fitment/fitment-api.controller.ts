import { Body, Controller, HttpCode, Post } from '@nestjs/common';
import { comparison, type ComparisonAnswer, conformance, type ConformanceAnswer, orderPlan, type OrderPlanAnswer } from '#libs/fitment';
import { AnyStaff, ChangesNothing } from '../../platform/access/access.decorator.ts';
import { answerOrRefuse } from './answer-or-refuse.ts';
import { ComparisonDto } from './dto/comparison.dto.ts';
import { ConformanceDto } from './dto/conformance.dto.ts';
import { OrderPlanDto } from './dto/order-plan.dto.ts';

/** Which variant is right and which to order; each call is one pure function, the same that the parts bench uses. */
@Controller('api/v1/fitment')
@AnyStaff()
@ChangesNothing()
export class FitmentApiController {
  /** Whether a measured figure keeps its limits, allowing for the instrument. `acceptance` is null where this instrument can't prove it. */
  @Post('conformance')
  @HttpCode(200)
  conformance(@Body() input: ConformanceDto): ConformanceAnswer {
    return answerOrRefuse(() => conformance(input));
  }

  /** Which candidate the readings agree with, how sure that is, and what to read next. */
  @Post('comparison')
  @HttpCode(200)
  comparison(@Body() input: ComparisonDto): ComparisonAnswer {
    return answerOrRefuse(() => comparison(input));
  }

  /** Expected cost of each possible order, strip first beside them, and what one more reading is worth at most. */
  @Post('order-plan')
  @HttpCode(200)
  orderPlan(@Body() input: OrderPlanDto): OrderPlanAnswer {
    return answerOrRefuse(() => orderPlan(input));
  }
}
