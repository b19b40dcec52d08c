import { Transform } from 'class-transformer';
import { IsIn, Matches } from 'class-validator';
import type { GaugeObservation } from '#libs/warm-up';
import { trimmed } from '../../../platform/trimmed.ts';
import type { LogRole } from '../log-setting.ts';

export class GaugeLookDto {
  @IsIn(['stays-cold', 'below-middle', 'middle', 'hot'], { message: 'Say where the gauge stood.' })
  reading!: GaugeObservation['reading'];

  @Transform(trimmed)
  @Matches(/^\d{1,3}$/, { message: 'Give the minutes that were driven, in whole figures.' })
  minutesDriven!: string;

  @Transform(trimmed)
  @Matches(/^$|^[-\u2212]?\d{1,2}$/, { message: 'Give the outside temperature in whole °C, or leave it empty.' })
  outsideC: string = '';

  @IsIn(['before', 'after'], { message: 'Say whether this was before or after the repair.' })
  gaugeRole!: LogRole;
}
