import { IsIn, IsUUID } from 'class-validator';

export class ChoiceDto {
  @IsUUID(undefined, { message: 'Choose a variant.' })
  variantId!: string;

  @IsIn(['side-by-side', 'readings', 'stamp', 'fitted-before'], { message: 'Say what the choice rests on.' })
  basis!: 'side-by-side' | 'readings' | 'stamp' | 'fitted-before';
}
