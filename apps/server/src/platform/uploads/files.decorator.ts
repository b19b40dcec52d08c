import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { requestFiles, type UploadedFile } from './request-files.ts';

/** The files chosen in the named field, none of them empty-handed; only on routes that say `@TakesFiles`. */
export const Files = createParamDecorator((field: string, context: ExecutionContext): readonly UploadedFile[] =>
  requestFiles(context.switchToHttp().getRequest<FastifyRequest>()).files.filter((file) => file.field === field),
);
