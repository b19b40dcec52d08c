import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { formBack } from './flash.ts';
import type { FormState } from './form-state.ts';

/** What the named form of this page says back, if it was refused. */
export const FormBack = createParamDecorator((form: string, context: ExecutionContext): FormState => {
  const request = context.switchToHttp().getRequest<FastifyRequest>();
  return formBack(request, form);
});
