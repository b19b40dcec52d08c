import { IsIn, IsOptional, IsUUID } from 'class-validator';
import { AGE_BANDS, type AgeBand } from '#libs/unit-life';

export const WHATS = ['at-supplier', 'late', 'soon', 'owed'] as const;

/** Which of the pieces behind a sum. */
export class MoneyUnitsDto {
  @IsOptional()
  @IsIn(WHATS, { message: 'Choose one of the sums.' })
  what?: (typeof WHATS)[number];

  @IsOptional()
  @IsUUID('all', { message: 'Choose a supplier.' })
  supplier?: string;

  @IsOptional()
  @IsIn(AGE_BANDS.map(({ key }) => key), { message: 'Choose one of the ages.' })
  age?: AgeBand;
}
