import { RouteConfig } from '@nestjs/platform-fastify';
import type { FastifyRequest } from 'fastify';

/** What a route takes beside its fields. */
export interface FileLimits {
  mostFiles: number;
  /** Of each file. */
  mostBytes: number;
  /** Of a JSON body where it may be longer than elsewhere. */
  mostJsonBytes?: number;
}

/** A route that takes files (`multipart/form-data`); any other refuses them unread. They are read by `@Files('name of the field')`. */
export const TakesFiles = (takesFiles: FileLimits): MethodDecorator => RouteConfig({ takesFiles });

export const fileLimitsIn = (config: object | undefined): FileLimits | undefined =>
  (config as { takesFiles?: FileLimits } | undefined)?.takesFiles;

export const fileLimitsOf = (request: FastifyRequest): FileLimits | undefined => fileLimitsIn(request.routeOptions.config);
