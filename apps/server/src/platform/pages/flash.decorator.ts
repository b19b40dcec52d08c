import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { flashFor } from './flash.ts';
import { type FormState, formState } from './form-state.ts';

/** What the named form of this page says back, if it was refused. */
export const FormBack = createParamDecorator((form: string, context: ExecutionContext): FormState => {
  const request = context.switchToHttp().getRequest<FastifyRequest>();
  return formState(flashFor(request), form);
});
