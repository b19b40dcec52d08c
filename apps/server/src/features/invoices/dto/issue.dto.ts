import { IsIn, IsOptional } from 'class-validator';

export class IssueDto {
  /** Left out: with everything that a full invoice has. */
  @IsOptional()
  @IsIn(['full', 'simplified'], { message: 'Choose whether the invoice is a full or a simplified one.' })
  form?: 'full' | 'simplified';
}
