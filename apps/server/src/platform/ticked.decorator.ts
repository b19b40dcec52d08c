import { applyDecorators } from '@nestjs/common';
import { IsIn, IsOptional } from 'class-validator';

/** A box of a form: a browser sends `on`, or nothing. */
export const Ticked = (message = 'Tick it, or leave it unticked.'): PropertyDecorator =>
  applyDecorators(IsOptional(), IsIn(['on'], { message }));
