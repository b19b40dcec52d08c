import { Type } from 'class-transformer';
import { ArrayMaxSize, IsArray, IsIn, IsNumber, IsOptional, IsString, MaxLength, ValidateNested } from 'class-validator';
import { A_NUMBER } from './conformance.dto.ts';

const RECOURSES = ['blind', 'informed'] as const;

/** A variant that could be ordered. */
export class OrderCandidateDto {
  @IsString({ message: 'Send an id.' })
  @MaxLength(200, { message: 'Shorten the id to 200 letters.' })
  id!: string;

  /** Of being the right one; what is missing to 1 over all candidates fits none. */
  @IsNumber({}, A_NUMBER)
  probability!: number;

  /** Purchase price of one, net. */
  @IsNumber({}, A_NUMBER)
  price!: number;

  /** What the supplier keeps of an unneeded one; 100 where it can't go back. */
  @IsNumber({}, A_NUMBER)
  restockingPercent!: number;
}

/** All costs in one currency. */
export class OrderPlanDto {
  @IsArray({ message: 'Send a list of candidates.' })
  @ArrayMaxSize(100, { message: 'Send 100 candidates at most.' })
  @ValidateNested({ each: true, message: 'Send each candidate as an object.' })
  @Type(() => OrderCandidateDto)
  candidates!: OrderCandidateDto[];

  /** Carriage of one order. */
  @IsNumber({}, A_NUMBER)
  carriage!: number;

  /** Cost of one return trip, however many pieces go back. */
  @IsNumber({}, A_NUMBER)
  returnCarriage!: number;

  /** Cost of one more round. */
  @IsNumber({}, A_NUMBER)
  delayCost!: number;

  /** Cost of the bay that a stripped car holds; 0 if left out. */
  @IsOptional()
  @IsNumber({}, A_NUMBER)
  bayHoldCost?: number;

  /** What is done when nothing of the first order fits: "blind" (default) plans by probability again, "informed" orders the right one. */
  @IsOptional()
  @IsIn(RECOURSES, { message: 'recourse: send "blind" or "informed".' })
  recourse?: (typeof RECOURSES)[number];
}
