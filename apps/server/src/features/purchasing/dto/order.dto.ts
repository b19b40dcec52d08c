import { Transform } from 'class-transformer';
import { ArrayMaxSize, IsArray, IsIn, IsOptional, IsString, IsUUID, Matches, MaxLength } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';
import { typedList } from './typed-list.ts';

export const ODD_ARRIVALS = ['surplus', 'wrong', 'damaged', 'substitute', 'replacement'] as const;

/** The variants to order for a job, one of each. */
export class OrderDto {
  @Transform(typedList)
  @IsArray()
  @ArrayMaxSize(50, { message: 'That is too many for one car: leave some out.' })
  @IsUUID('all', { each: true, message: 'Choose from the list.' })
  variants: string[] = [];

  /** Left out where nobody knows. */
  @IsOptional()
  @Transform(trimmed)
  @Matches(/^$|^\d{4}-\d{2}-\d{2}$/, { message: 'Choose the day on which it should come, or leave it empty.' })
  expectedOn?: string;
}

export class GoodsInDto {
  @Transform(trimmed)
  @IsString({ message: 'Type the code on the label.' })
  @MaxLength(20, { message: 'A code has six signs: read the label again.' })
  code!: string;
}

/** A piece that was not on its way: what it is and why it came. */
export class OddArrivalDto {
  @IsUUID('all', { message: 'Choose what it is.' })
  variantId!: string;

  @IsIn(ODD_ARRIVALS, { message: 'Say why it came.' })
  reason!: (typeof ODD_ARRIVALS)[number];
}
