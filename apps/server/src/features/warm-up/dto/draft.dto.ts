import { applyDecorators } from '@nestjs/common';
import { Transform } from 'class-transformer';
import { IsIn, IsString, Matches, MaxLength } from 'class-validator';
import { trimmed } from '../../../platform/trimmed.ts';
import { LogSettingDto } from './log-setting.dto.ts';

const Said = (): PropertyDecorator =>
  applyDecorators(
    Transform(trimmed),
    IsString({ message: 'Choose one of the list.' }),
    MaxLength(200, { message: 'Choose one of the list.' }),
  );

/** A log that was looked over: what the file does not say or was understood wrongly. Empty means: as the file says. */
export class DraftDto extends LogSettingDto {
  @Said() columnTime: string = '';
  @Said() columnCoolant: string = '';
  @Said() columnSpeed: string = '';
  @Said() columnRpm: string = '';
  @Said() columnLoad: string = '';
  @Said() columnIntake: string = '';
  @Said() columnAmbient: string = '';
  @Said() columnAirFlow: string = '';
  @Said() unitTime: string = '';
  @Said() unitCoolant: string = '';
  @Said() unitSpeed: string = '';
  @Said() unitRpm: string = '';
  @Said() unitLoad: string = '';
  @Said() unitIntake: string = '';
  @Said() unitAmbient: string = '';
  @Said() unitAirFlow: string = '';

  /** Seconds from row to row, where no column tells the time. */
  @Transform(trimmed)
  @Matches(/^$|^\d{1,4}([.,]\d{1,4})?$/, { message: 'Type the seconds from row to row, such as 0.5, or leave it empty.' })
  rowIntervalS: string = '';

  @IsIn(['read', 'keep'], { message: 'Read it again, or keep it.' })
  then: 'read' | 'keep' = 'read';
}
