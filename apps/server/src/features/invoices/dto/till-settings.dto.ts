import { Transform } from 'class-transformer';
import { IsIn, IsString, Matches, MaxLength } from 'class-validator';
import { Ticked } from '../../../platform/ticked.decorator.ts';
import { trimmed } from '../../../platform/trimmed.ts';

const SUM_OR_NONE = /^$|^\d{1,8}([.,]\d{1,2})?$/;
const CHOOSE = { message: 'Choose from the list.' };

export class TillSettingsDto {
  @Transform(trimmed)
  @IsString()
  @MaxLength(40, { message: 'Shorten the company number to 40 letters.' })
  companyNumber = '';

  @IsIn(['a4', 'letter'], CHOOSE)
  paper!: 'a4' | 'letter';

  @IsIn(['plain', 'hybrid', 'hybrid-for-business'], CHOOSE)
  pdfForm!: 'plain' | 'hybrid' | 'hybrid-for-business';

  @IsIn(['S', 'Z', 'E', 'O'], CHOOSE)
  vatCategory!: 'S' | 'Z' | 'E' | 'O';

  @Transform(trimmed)
  @IsString()
  @MaxLength(200, { message: 'Shorten the ground to 200 letters.' })
  exemptionWords = '';

  @Ticked()
  cashAccounting?: 'on';

  @Transform(trimmed)
  @Matches(SUM_OR_NONE, { message: 'Give the limit with tax in figures, such as 100.00, or leave it empty.' })
  simplifiedLimit = '';

  @IsIn(['tax-document', 'prepaid'], CHOOSE)
  depositForm!: 'tax-document' | 'prepaid';

  @IsIn(['mark-up', 'margin', 'amount', 'bands'], CHOOSE)
  partsKind!: 'mark-up' | 'margin' | 'amount' | 'bands';

  @Transform(trimmed)
  @IsString()
  @MaxLength(12, { message: 'Shorten the figure.' })
  partsFigure = '';

  @Transform(trimmed)
  @IsString()
  @MaxLength(500, { message: 'Shorten the bands to 500 letters.' })
  partsBands = '';

  @Transform(trimmed)
  @IsString()
  @MaxLength(12, { message: 'Shorten the step.' })
  partsRoundTo = '';

  @Transform(trimmed)
  @Matches(/^$|^(100|\d{1,2}([.,]\d{1,2})?)$/, { message: 'Give the share in per cent, such as 3, or leave it empty.' })
  consumablesPct = '';

  @Transform(trimmed)
  @Matches(SUM_OR_NONE, { message: 'Give the most in figures, such as 12.00, or leave it empty.' })
  consumablesMost = '';

  @Matches(/^\d{1,9}$/, { message: 'Reload the page and change it again.' })
  version!: string;
}
